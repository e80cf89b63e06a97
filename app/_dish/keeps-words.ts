import { means, type Part, type Parts, type Said, within, wrong } from '#app/_ui/parts.ts'
import { keepWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Bound, Dish, KeepHow } from '#lib/domain/menu.ts'
import { type DishEdit, meansFields } from './dish-edit.ts'
import { moreKitParts, ovenParts, type UseScene, usesParts } from './use-words.ts'

const WRONG_TIME = 'Write a time, such as 10 min or 2 h.'
const KEEPS = Object.entries<string>(keepWords)
const AFTER_WORDS: Readonly<Record<Bound, string>> = {
  quality: 'and is past its best after that',
  safety: 'and is not safe after that',
}
const BOUNDS = Object.entries<string>(AFTER_WORDS)

/** "It keeps hot for 20 min and is past its best after that. Meanwhile it takes a small ring." */
export const keepsParts = (dish: Dish, scene: UseScene): Parts<DishEdit> => {
  const { keeps } = dish
  const keep = (next: Partial<Dish['keeps']>): DishEdit => ({ kind: 'fields', patch: { keeps: { ...keeps, ...next } } })
  return [
    'It keeps ',
    {
      kind: 'choice',
      at: 'keeps.how',
      label: 'How it keeps',
      value: keeps.how,
      options: KEEPS,
      choose: (how) => means(keep({ how: how as KeepHow })),
    },
    ' for ',
    {
      kind: 'text',
      at: 'keeps.most',
      label: 'How long it keeps',
      text: durationText(keeps.most),
      write: (text) => {
        const most = readDuration(text)
        return most === null ? wrong(WRONG_TIME) : means(keep({ most }))
      },
    },
    ' ',
    {
      kind: 'choice',
      at: 'keeps.kind',
      label: 'What happens after that',
      value: keeps.kind,
      options: BOUNDS,
      choose: (kind) => means(keep({ kind: kind as Bound })),
    },
    '. ',
    ...(keeps.uses.length === 0 ? [] : ['Meanwhile it stands']),
    ...within(usesParts(keeps.uses, scene), (uses) => keep({ uses: [...uses] })),
    ...(keeps.uses.length === 0 ? [] : ['. ']),
    ...within(moreKitParts(keeps.uses, scene), (uses) => keep({ uses: [...uses] })).map((part) =>
      part === 'It takes ' ? 'Meanwhile it takes ' : part,
    ),
    ...within(ovenParts(keeps.uses, scene), (uses) => keep({ uses: [...uses] })),
  ]
}

const NOTHING = /^\s*(?:$|no\b|not\b|with\b)/i

const edge = (dish: Dish, at: 'early' | 'late', label: string, empty: string): Part<DishEdit> => ({
  kind: 'text',
  at: `toTable.${at}`,
  label,
  text: secondsOf(dish.toTable[at]) === 0 ? '' : durationText(dish.toTable[at]),
  empty,
  write: (text) => {
    const time = NOTHING.test(text) ? 'PT0S' : readDuration(text)
    return time === null ? wrong(WRONG_TIME) : meansFields({ toTable: { ...dish.toTable, [at]: time } })
  },
})

/** "It may be there 15 min before the rest of its course, at the latest with it." */
export const tableParts = (dish: Dish): Parts<DishEdit> => [
  'It may reach the table ',
  edge(dish, 'early', 'How early it may be on the table', 'not at all'),
  ' before the rest of its course, and ',
  edge(dish, 'late', 'How late it may come', 'not at all'),
  ' after it.',
]

/** "It travels cold, at most 40 min, and is not safe after that." For a dish of another kitchen, or one that says how it travels. */
export const carryParts = (dish: Dish, host: string): Parts<DishEdit> => {
  const { carry } = dish
  if (!carry && dish.kitchen === host) return []
  if (!carry)
    return [
      'How long it may be on the road is not said. ',
      {
        kind: 'press',
        at: 'carry.add',
        label: 'Say how it travels',
        words: 'say how it travels',
        press: () => meansFields({ carry: { how: dish.keeps.how, most: 'PT1H', kind: 'quality' } }),
      },
    ]
  const put = (next: Partial<NonNullable<Dish['carry']>>): Said<DishEdit> => meansFields({ carry: { ...carry, ...next } })
  return [
    'It travels ',
    {
      kind: 'choice',
      at: 'carry.how',
      label: 'How it travels',
      value: carry.how,
      options: KEEPS,
      choose: (how) => put({ how: how as KeepHow }),
    },
    ', at most ',
    {
      kind: 'text',
      at: 'carry.most',
      label: 'How long it may be on the road',
      text: durationText(carry.most),
      write: (text) => {
        const most = readDuration(text)
        return most === null ? wrong(WRONG_TIME) : put({ most })
      },
    },
    ' ',
    {
      kind: 'choice',
      at: 'carry.kind',
      label: 'What happens after that on the road',
      value: carry.kind,
      options: BOUNDS,
      choose: (kind) => put({ kind: kind as Bound }),
    },
    '. ',
    {
      kind: 'press',
      at: 'carry.away',
      label: 'No limit on the road',
      words: 'no limit on the road',
      press: () => meansFields({ carry: undefined }),
    },
  ]
}

/** Where the finished dish waits: at the hosts'. */
export const keepingScene = (evening: Evening, kitchens: string): UseScene => ({
  kitchen: evening.kitchens.find((kitchen) => kitchen.id === evening.host),
  kitchens,
  at: 'keeps.uses',
  named: (what) => `While it waits: ${what}`,
})
