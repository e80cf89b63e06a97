import { gradeWords, NOT_EATEN_CHOICES } from '#app/_words/need-choices.ts'
import { DRINKS_CHOICES, DRIVES_CHOICES, EATS_CHOICES, PLATE_CHOICES, REPLY_CHOICES } from '#app/_words/reply.ts'
import type { Problem } from './answer-of.ts'
import { KEPT, OWN, type PersonFields } from './fields.ts'
import { type Html, html } from './html.ts'

type Choices = readonly (readonly [value: string, words: string, group?: string])[]

interface Blank {
  readonly name: string
  readonly label: string
  readonly value: string
  readonly problems: readonly Problem[]
}

/** Marks a field as wrong and says where it is told; the summary above leads to it. */
const wrongOf = ({ name, problems }: Pick<Blank, 'name' | 'problems'>): Html =>
  problems.some(({ field }) => field === name) ? html` aria-invalid="true" aria-describedby="${name}-wrong"` : html``

const toldOf = ({ name, problems }: Pick<Blank, 'name' | 'problems'>): readonly Html[] =>
  problems.filter(({ field }) => field === name).map(({ text }) => html`<span class="wrong" id="${name}-wrong">${text}</span>`)

const choice = (blank: Blank, options: Choices, look = ''): Html => {
  const groups = [...new Set(options.map(([, , group]) => group))]
  const option = ([value, words]: Choices[number]) =>
    html`<option value="${value}"${blank.value === value ? html` selected` : null}>${words}</option>`
  return html`<select class="word ${look}" id="${blank.name}" name="${blank.name}" aria-label="${blank.label}" autocomplete="off"${wrongOf(blank)}>${groups.map(
    (group) => {
      const inside = options.filter((each) => each[2] === group).map(option)
      return group === undefined ? html`${inside}` : html`<optgroup label="${group}">${inside}</optgroup>`
    },
  )}</select>${toldOf(blank)}`
}

export const line = (blank: Blank, more: { readonly most: number; readonly empty: string; readonly auto?: string }): Html =>
  html`<input class="word" id="${blank.name}" name="${blank.name}" aria-label="${blank.label}" value="${blank.value}" maxlength="${more.most}" placeholder="${more.empty}" autocomplete="${more.auto ?? 'off'}" size="${Math.max(4, (blank.value || more.empty).length)}"${wrongOf(blank)}>${toldOf(blank)}`

export const time = (blank: Blank): Html =>
  html`<input class="word" type="time" id="${blank.name}" name="${blank.name}" aria-label="${blank.label}" value="${blank.value}"${wrongOf(blank)}>${toldOf(blank)}`

/** One person's answer in sentences. The first speaks for itself; of all others it is told. */
export const personForm = (person: PersonFields, at: number, problems: readonly Problem[], arrives: Html | null): Html => {
  const isSelf = at === 0
  const who = isSelf ? 'You' : person.name || 'Somebody else'
  const blank = (name: string, label: string, value: string): Blank => ({
    name: `${name}-${at}`,
    label: `${who}: ${label}`,
    value,
    problems,
  })
  const name = line(blank('name', 'name', person.name), {
    most: 80,
    empty: isSelf ? 'my name' : 'their name',
    ...(isSelf && { auto: 'name' }),
  })
  const reply = choice(blank('reply', 'coming or not', person.reply), REPLY_CHOICES[isSelf ? 'self' : 'other'], 'reply')
  const plates: Choices = person.plate === KEPT ? [[KEPT, 'a plate as agreed'], ...PLATE_CHOICES] : PLATE_CHOICES
  const plate = choice(blank('plate', 'how much', person.plate), plates, 'plate')
  const eats = choice(blank('eats', 'what is eaten', person.eats), EATS_CHOICES, 'eats')
  const drinks = choice(blank('drinks', 'alcohol', person.drinks), DRINKS_CHOICES)
  const drives = choice(blank('drives', 'driving', person.drives), DRIVES_CHOICES[isSelf ? 'self' : 'other'])
  const [they, eat, drink] = isSelf ? ['I', 'I eat', 'I drink'] : ['They', 'They eat', 'They drink']
  const hasWords = isSelf || person.words !== ''
  return html`<fieldset class="person"><legend class="vh">${who}</legend>
<input type="hidden" name="id-${at}" value="${person.id}">
<div class="said"><span>${isSelf ? 'I am ' : ''}${name}${isSelf ? ' and ' : ' '}${reply}</span><span class="comes">${arrives}. ${they} have ${plate}.</span></div>
<div class="comes">
<div class="said">${eat} ${eats}<span class="stop">.</span></div>
<ul class="needs">${person.needs.map((row, place) => needRow(row, `${at}-${place}`, who, problems))}</ul>
<p class="severe">Because it is severe, your hosts are asked to make this plate first, on its own board, and to have one person carry it. Please speak with them about it as well.</p>
<div class="said grown">${drink} ${drinks} and ${drives}.</div>
</div>
${hasWords ? wordsOf(blank('words', 'anything else', person.words), isSelf) : null}
</fieldset>`
}

const wordsOf = (blank: Blank, isSelf: boolean): Html =>
  html`<details class="more"${blank.value === '' ? null : html` open`}><summary>${isSelf ? 'Tell them something else' : 'Something else about them'}</summary><textarea id="${blank.name}" name="${blank.name}" aria-label="${blank.label}" maxlength="2000" rows="3"${wrongOf(blank)}>
${blank.value}</textarea>${toldOf(blank)}</details>`

const NEEDS: Choices = [...NOT_EATEN_CHOICES, [OWN, 'something that is not here', 'Something else']]
const needChoices = (at: string): Choices => [['', at.endsWith('-0') ? 'choose what' : 'and what else?'], ...NEEDS]
const GRADES: Choices = [['', 'how serious is it?'], ...Object.entries(gradeWords)]

const needRow = (row: PersonFields['needs'][number], at: string, who: string, problems: readonly Problem[]): Html => {
  const blank = (name: string, label: string, value: string): Blank => ({
    name: `${name}-${at}`,
    label: `${who}: ${label}`,
    value,
    problems,
  })
  return html`<li class="need">${choice(blank('need', 'what not', row.need), needChoices(at), 'what')}<span class="own"> ${line(
    blank('own', 'what it is', row.own),
    { most: 40, empty: 'what it is' },
  )}</span><span class="grade">, ${choice(blank('grade', 'how serious', row.grade), GRADES, 'grade-word')}</span></li>`
}
