import { means, type Part, type Parts, wrong } from '#app/_ui/parts.ts'
import { numberText } from '#app/_words/amount.ts'
import { foodWord, readWords } from '#app/_words/food.ts'
import { drinksWords, guestName, replyWords } from '#app/_words/guest.ts'
import { gradeWords, NEED_CHOICES, usualGrade } from '#app/_words/need-choices.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { type Guest, NeedGrade } from '#lib/domain/people.ts'
import { type GuestEdit, usualPortion } from './guest-edit.ts'

type Need = NonNullable<Guest['needs']>[number]
type GuestPart = Part<GuestEdit>

const MOST_NEEDS = 40
const REPLIES = (['yes', 'maybe', 'no', 'waiting'] as const).map((reply) => [reply, replyWords[reply]] as const)
const GRADES = NeedGrade.options.map((grade) => [grade, gradeWords[grade]] as const)
const DRINKS = (['alcohol', 'none', 'unknown'] as const).map((drinks) => [drinks, drinksWords[drinks]] as const)

const oneOf = <T extends string>(options: readonly (readonly [T, string])[], value: string): T | undefined =>
  options.find(([option]) => option === value)?.[0]

const choice = <T extends string>(
  at: string,
  label: string,
  value: T,
  options: readonly (readonly [T, string])[],
  choose: (value: T) => GuestEdit,
): GuestPart => ({
  kind: 'choice',
  at,
  label,
  value,
  options,
  choose: (chosen) => {
    const known = oneOf(options, chosen)
    return known === undefined ? wrong('Choose one of the list.') : means(choose(known))
  },
})

/** Who it is, whether they come, as a child or not, for how much, and when. */
export const comingParts = (guest: Guest): Parts<GuestEdit> => {
  const who = guestName(guest)
  const name: GuestPart = {
    kind: 'text',
    at: 'name',
    label: `Name of ${who}`,
    text: guest.name,
    empty: 'a name',
    write: (text) => {
      const written = cleanText(text.trim(), false).slice(0, 80)
      return written ? means({ name: written }) : wrong('Write a name, or take this guest off the list.')
    },
  }
  const reply = choice('reply', `${who}: comes or not`, guest.reply, REPLIES, (chosen) => ({ reply: chosen }))
  if (guest.reply === 'no') return [name, ' ', reply, '.']
  return [
    name,
    ' ',
    reply,
    ', ',
    choice(
      'child',
      `${who}: a child or not`,
      guest.child ? 'child' : 'grown',
      [
        ['grown', 'a grown-up'],
        ['child', 'a child'],
      ],
      (chosen) => {
        const child = chosen === 'child'
        const isUsual = guest.portion === usualPortion(guest.child)
        return { child, ...(isUsual ? { portion: usualPortion(child) } : {}) }
      },
    ),
    ', eats ',
    {
      kind: 'text',
      at: 'portion',
      label: `${who}: portions`,
      text: numberText(String(guest.portion)),
      write: (text) => {
        const portion = readPortions(text)
        return portion === null || portion > 5 ? wrong('Write a number of portions up to 5, such as ½.') : means({ portion })
      },
    },
    guest.portion === 1 ? ' portion and comes ' : ' portions and comes ',
    {
      kind: 'text',
      at: 'arrives',
      label: `${who}: comes at`,
      text: guest.arrives?.time ?? '',
      empty: 'with the others',
      write: (text) => {
        if (text.trim() === '') return means({ arrives: null })
        const time = readClock(text)
        return time === null
          ? wrong('Write a time, such as 20:15, or nothing for with the others.')
          : means({ arrives: { day: guest.arrives?.day ?? 0, time } })
      },
    },
    '.',
  ]
}

const KNOWN = [
  ['unknown', 'is not known yet'],
  ['none', 'is nothing: they eat everything'],
  ['some', 'is'],
] as const

/** What they cannot or will not eat, each with how serious it is, and one more. */
export const needParts = (guest: Guest): Parts<GuestEdit> => {
  const who = guestName(guest)
  const needs = guest.needs ?? []
  const add = (need: string): GuestEdit => ({ needs: [...needs, { need, grade: usualGrade(need) }] })
  const unused = NEED_CHOICES.filter(([need]) => !needs.some((each) => each.need === need))
  const more: Parts<GuestEdit> =
    needs.length >= MOST_NEEDS
      ? []
      : [
          {
            kind: 'choice',
            at: 'more',
            label: `${who}: add what they do not eat`,
            value: '',
            options: [['', needs.length === 0 ? 'choose what' : 'and one more'], ...unused],
            choose: (need) => (need === '' ? means({}) : means(add(need))),
          },
          ', or ',
          {
            kind: 'text',
            at: 'own',
            label: `${who}: what they do not eat, in own words`,
            text: '',
            empty: 'in other words',
            write: (text) => {
              const words = readWords(text)
              if (text.trim() === '') return means({})
              if (words === null) return wrong('Write single foods, such as “chicory, raw onion”.')
              const fresh = words.filter((word) => !needs.some((each) => each.need === word))
              return means({
                needs: [...needs, ...fresh.map((need) => ({ need, grade: usualGrade(need) }))].slice(0, MOST_NEEDS),
              })
            },
          },
          '.',
        ]
  if (guest.needs === null || needs.length === 0)
    return [
      'What they do not eat ',
      choice(
        'needs',
        `${who}: what is known of what they do not eat`,
        guest.needs === null ? 'unknown' : 'none',
        KNOWN.slice(0, 2),
        (known) => ({
          needs: known === 'none' ? [] : null,
        }),
      ),
      ', or: ',
      ...more,
    ]
  return ['They do not eat: ', ...needs.flatMap((each, index) => needPart(who, needs, each, index)), ...more]
}

const needPart = (who: string, needs: readonly Need[], { need, grade }: Need, index: number): Parts<GuestEdit> => {
  const word = NEED_CHOICES.find(([known]) => known === need)?.[1] ?? foodWord(need)
  return [
    {
      kind: 'choice',
      at: `needs.${need}`,
      label: `${who}: ${word}`,
      value: need,
      options: [
        [need, word],
        ['', `not ${word} any more`],
      ],
      choose: (chosen) => means(chosen === '' ? { needs: needs.filter((_, at) => at !== index) } : {}),
    },
    ' (',
    choice(`needs.${need}.grade`, `${who}: how serious ${word} is`, grade, GRADES, (chosen) => ({
      needs: needs.map((other, at) => (at === index ? { need, grade: chosen } : other)),
    })),
    '), ',
  ]
}

/** Alcohol, driving, and what else they said. */
export const moreParts = (guest: Guest): Parts<GuestEdit> => {
  const who = guestName(guest)
  return [
    'At the table ',
    choice('drinks', `${who}: alcohol`, guest.drinks, DRINKS, (drinks) => ({ drinks })),
    ', and ',
    choice(
      'drives',
      `${who}: drives`,
      guest.drives ? 'drives' : 'not',
      [
        ['drives', 'drives home'],
        ['not', 'does not drive'],
      ],
      (chosen) => ({ drives: chosen === 'drives' }),
    ),
    '. They said: ',
    {
      kind: 'text',
      at: 'words',
      label: `${who}: what they said`,
      text: guest.words,
      empty: 'nothing else',
      long: true,
      write: (text) => means({ words: cleanText(text.trim(), true).slice(0, 2000) }),
    },
    '.',
  ]
}
