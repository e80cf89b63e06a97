import { NEED_CHOICES, usualGrade } from '#app/_words/need-choices.ts'
import type { At } from '#lib/domain/atoms.ts'
import { type Guest, NeedGrade } from '#lib/domain/people.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Answer } from '#server/guests/answer.ts'
import type { Reply } from '#server/guests/reply.ts'
import { KEPT, type NeedFields, OWN, type PersonFields, PLATES, type ReplyFields } from './fields.ts'

/** What is wrong with a field, by its name in the form, and what to do about it. */
export interface Problem {
  readonly field: string
  readonly text: string
}

/** What the form says, or everything that keeps it from being an answer. */
export const answerOf = (fields: ReplyFields, reply: Reply): Result<Answer, readonly Problem[]> => {
  const problems: Problem[] = []
  const tell = (field: string, text: string) => problems.push({ field, text })
  const arrives = timeRead(fields, reply, tell)
  const people = fields.people.flatMap((person, at) =>
    isEmpty(person, at) ? [] : [personRead(person, at, reply, arrives, tell)],
  )
  if (!fields.consent && people.some(({ needs, words }) => needs !== null || words !== ''))
    tell(
      'consent',
      'Tick that they may keep what you eat and what you wrote, or leave both out: whether you come can be told alone.',
    )
  if (problems.length > 0) return fail(problems)
  return ok({ revision: Number(fields.revision) || 0, consent: fields.consent, people })
}

type Tell = (field: string, text: string) => void

/** Room for somebody else that was not used. */
const isEmpty = ({ id, name, eats, needs }: PersonFields, at: number): boolean =>
  at > 0 && id === '' && name === '' && eats === '' && needs.every(({ need }) => need === '')

/** undefined: as it is stored, for each; null: from the beginning. */
type Arrives = At | null | undefined

const timeRead = ({ arrives, arrivedBefore }: ReplyFields, { evening }: Reply, tell: Tell): Arrives => {
  if (arrives === arrivedBefore) return undefined
  if (arrives === '' || arrives === evening.guestsFrom.time) return null
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(arrives)) {
    tell('arrives', 'Write when you come as hours and minutes, such as 19:30.')
    return undefined
  }
  // A time in the small hours of an evening that begins later is the next day's.
  const isNextDay = arrives < '05:00' && evening.guestsFrom.time > '12:00'
  return { day: isNextDay ? 1 : 0, time: arrives }
}

const isReply = (text: string): text is 'yes' | 'no' | 'maybe' => text === 'yes' || text === 'no' || text === 'maybe'

const personRead = (person: PersonFields, at: number, reply: Reply, time: Arrives, tell: Tell): Answer['people'][number] => {
  const before = reply.people.find(({ id }) => id === person.id)
  if (person.name === '') tell(`name-${at}`, at === 0 ? 'Write your name.' : 'Write their name.')
  if (person.name.length > 80) tell(`name-${at}`, 'Write a shorter name: at most 80 letters.')
  if (person.words.length > 2000) tell(`words-${at}`, 'That is longer than fits: at most 2000 letters.')
  if (at === 0 && !isReply(person.reply)) tell('reply-0', 'Choose whether you come.')
  const arrives = time === undefined ? before?.arrives : (time ?? undefined)
  const plate = person.plate === KEPT && before ? before : (PLATES[person.plate] ?? { child: false, portion: 1 })
  const isAdded = before === undefined
  return {
    id: isAdded ? null : before.id,
    name: person.name,
    // Who is added comes, unless it is said otherwise.
    reply: isReply(person.reply) ? person.reply : isAdded ? 'yes' : before.reply,
    child: plate.child,
    portion: plate.portion,
    ...(arrives && { arrives }),
    needs: needsRead(person, at, tell),
    drinks: plate.child ? 'none' : drinksRead(person.drinks),
    drives: !plate.child && person.drives === 'yes',
    words: person.words,
  }
}

const drinksRead = (text: string): Guest['drinks'] => (text === 'alcohol' || text === 'none' ? text : 'unknown')

const needsRead = ({ eats, needs: rows }: PersonFields, at: number, tell: Tell): Guest['needs'] => {
  const filled = rows.map((row, place) => ({ row, place })).filter(({ row }) => row.need !== '')
  if (eats === 'all' && filled.length > 0) {
    tell(`eats-${at}`, 'It says “everything”, and what not as well. Choose “everything but”, or take the rest out.')
    return null
  }
  if (eats === 'all') return []
  if (filled.length === 0) {
    if (eats === 'but') tell(`need-${at}-0`, 'Choose what it is, or choose “everything” before it.')
    return null
  }
  const needs = filled.flatMap(({ row, place }) => needRead(row, `${at}-${place}`, tell))
  // Told twice, the more serious one counts.
  const weighty = needs.toSorted((a, b) => GRADES.indexOf(b.grade) - GRADES.indexOf(a.grade))
  return needs.filter((each) => weighty.find(({ need }) => need === each.need) === each)
}

const LISTED = new Set(NEED_CHOICES.map(([need]) => need))
const LONGEST = 40
const GRADES = NeedGrade.options

const needRead = (row: NeedFields, at: string, tell: Tell): NonNullable<Guest['needs']> => {
  const need = row.need === OWN ? wordOf(row.own) : row.need
  if (need === null || (row.need !== OWN && !LISTED.has(row.need))) {
    tell(
      `own-${at}`,
      'Write what it is in a word or two of letters, such as “kiwi fruit”; the rest can go in your own words below.',
    )
    return []
  }
  const grade = NeedGrade.safeParse(row.grade)
  if (grade.success) return [{ need, grade: grade.data }]
  if (row.need === OWN || usualGrade(need) === 'allergy') {
    tell(`grade-${at}`, 'Choose how serious it is: it decides how your plate is made.')
    return []
  }
  return [{ need, grade: usualGrade(need) }]
}

/** "Kiwi fruit" → "kiwi-fruit"; null when nothing of it can be such a word. */
const wordOf = (text: string): string | null => {
  const word = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  return word === '' || word.length > LONGEST ? null : word
}
