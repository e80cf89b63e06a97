import { means, type Parts, type Said, type TextBlank, within, wrong } from '#app/_ui/parts.ts'
import { keepWords, stateWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { shorten } from '#app/_words/shorten.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Bound, Dish, KeepHow } from '#lib/domain/menu.ts'
import { Dish as DishSchema } from '#lib/domain/menu.ts'
import type { Patch } from '#lib/plan/commands/set.ts'
import { moreKitParts, ovenParts, type UseScene, usesParts } from './use-words.ts'

/** What a sentence about a dish can change: its own fields, its course, or the kitchen it is made in, which makes it be carried. */
export type DishEdit =
  | { readonly kind: 'fields'; readonly patch: Patch<'dishes'> }
  | { readonly kind: 'course'; readonly course: string }
  | { readonly kind: 'kitchen'; readonly kitchen: string }

type Sentence = Parts<DishEdit>
const NONE = ''
const WRONG_TIME = 'Write a time, such as 10 min or 2 h.'
const set = (patch: Patch<'dishes'>): Said<DishEdit> => means({ kind: 'fields', patch })
const KEEPS = Object.entries<string>(keepWords)
const quoted = (text: string): string => `“${shorten(text, 40)}”`

const AFTER_WORDS: Readonly<Record<Bound, string>> = {
  quality: 'and is past its best after that',
  safety: 'and is not safe after that',
}
const BOUNDS = Object.entries<string>(AFTER_WORDS)

const numberIn = (text: string, put: (value: number) => Patch<'dishes'>): Said<DishEdit> => {
  const value = readPortions(text)
  return value === null ? wrong('Write a number up to 1000, such as 8 or 2½.') : set(put(value))
}

/** The name of the dish. */
export const nameBlank = (dish: Dish): TextBlank<DishEdit> => ({
  kind: 'text',
  at: 'name',
  label: 'Name of the dish',
  text: dish.name,
  long: true,
  write: (text) => {
    const name = cleanText(text, false).trim()
    if (name === '') return wrong('A dish needs a name.')
    return name.length > 120 ? wrong('A name has at most 120 letters.') : set({ name })
  },
})

/** "It is for everybody, 8; the recipe is for 4." */
const portionsParts = (dish: Dish, covers: number): Sentence => [
  'It is for ',
  {
    kind: 'text',
    at: 'portions',
    label: 'For how many it is made',
    text: dish.portions === undefined ? `everybody, ${covers}` : String(dish.portions),
    write: (text) => {
      if (/^\s*(?:$|every|all)/i.test(text)) return set({ portions: undefined })
      return numberIn(text, (portions) => ({
        portions,
        ...(dish.variant ? { variant: { ...dish.variant, portions } } : {}),
      }))
    },
  },
  '; the recipe is for ',
  {
    kind: 'text',
    at: 'yields',
    label: 'For how many the recipe is written',
    text: String(dish.yields),
    write: (text) => numberIn(text, (yields) => ({ yields })),
  },
  '.',
]

/** Dishes that can stand in for one: none that it, or its stand-in in turn, stands in for. */
const standIns = (dish: Dish, dishes: readonly Dish[]): readonly Dish[] => {
  const leads = (from: Dish): boolean => {
    const seen = new Set<string>()
    for (let at: Dish | undefined = from; at && !seen.has(at.id); at = dishes.find((each) => each.id === at?.standIn)) {
      if (at.id === dish.id) return true
      seen.add(at.id)
    }
    return false
  }
  return dishes.filter((each) => !leads(each))
}

/** "It is on the menu, in Main, and made in the hosts' kitchen. If it fails: nothing." */
const placeParts = (dish: Dish, evening: Pick<Evening, 'courses' | 'kitchens' | 'dishes'>): Sentence => [
  'It is ',
  {
    kind: 'choice',
    at: 'state',
    label: 'On the menu or not',
    value: dish.state,
    options: Object.entries<string>(stateWords),
    choose: (state) => set({ state: state as Dish['state'] }),
  },
  ', with ',
  {
    kind: 'choice',
    at: 'course',
    label: 'Its course',
    value: dish.course,
    options: evening.courses.map((course) => [course.id, course.name] as const),
    choose: (course) => means({ kind: 'course', course }),
  },
  ', and made in ',
  {
    kind: 'choice',
    at: 'kitchen',
    label: 'In which kitchen',
    value: dish.kitchen,
    options: evening.kitchens.map((kitchen) => [kitchen.id, kitchen.name] as const),
    choose: (kitchen) => means({ kind: 'kitchen', kitchen }),
  },
  '. If it fails: ',
  {
    kind: 'choice',
    at: 'standIn',
    label: 'Dish that stands in for it',
    value: dish.standIn ?? NONE,
    options: [
      [NONE, 'nothing stands in for it'],
      ...standIns(dish, evening.dishes).map((other) => [other.id, quoted(other.name)] as const),
    ],
    choose: (standIn) => set({ standIn: standIn === NONE ? undefined : standIn }),
  },
  '.',
]

/** "It keeps hot for 20 min and is past its best after that. Meanwhile it takes a small ring." */
const keepsParts = (dish: Dish, scene: UseScene): Sentence => {
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

const edge = (dish: Dish, at: 'early' | 'late', label: string, empty: string): Sentence[number] => ({
  kind: 'text',
  at: `toTable.${at}`,
  label,
  text: secondsOf(dish.toTable[at]) === 0 ? '' : durationText(dish.toTable[at]),
  empty,
  write: (text) => {
    const time = NOTHING.test(text) ? 'PT0S' : readDuration(text)
    return time === null ? wrong(WRONG_TIME) : set({ toTable: { ...dish.toTable, [at]: time } })
  },
})

/** "It may be there 15 min before the rest of its course, at the latest with it." */
const tableParts = (dish: Dish): Sentence => [
  'It may reach the table ',
  edge(dish, 'early', 'How early it may be on the table', 'not at all'),
  ' before the rest of its course, and ',
  edge(dish, 'late', 'How late it may come', 'not at all'),
  ' after it.',
]

/** "It travels cold, at most 40 min, and is not safe after that." For a dish of another kitchen, or one that says how it travels. */
const carryParts = (dish: Dish, host: string): Sentence => {
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
        press: () => set({ carry: { how: dish.keeps.how, most: 'PT1H', kind: 'quality' } }),
      },
    ]
  const put = (next: Partial<NonNullable<Dish['carry']>>): Said<DishEdit> => set({ carry: { ...carry, ...next } })
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
      press: () => set({ carry: undefined }),
    },
  ]
}

/** "For 2 it is what “Stew” is up to “Base”, and goes its own way from there." For a variant. */
const variantParts = (dish: Dish, evening: Pick<Evening, 'dishes' | 'steps'>): Sentence => {
  const { variant } = dish
  if (!variant) return []
  const put = (next: Partial<NonNullable<Dish['variant']>>, more: Patch<'dishes'> = {}): Said<DishEdit> =>
    set({ variant: { ...variant, ...next }, ...more })
  const stepsOf = (id: string) => evening.steps.filter((step) => step.dish === id)
  const originals = evening.dishes.filter(
    (other) => other.id !== dish.id && (other.id === variant.of || (!other.variant && stepsOf(other.id).length > 0)),
  )
  return [
    'For ',
    {
      kind: 'text',
      at: 'variant.portions',
      label: 'For how many the variant is',
      text: String(variant.portions),
      write: (text) => {
        const portions = readPortions(text)
        return portions === null ? wrong('Write a number, such as 2.') : put({ portions }, { portions })
      },
    },
    ' it is made like ',
    {
      kind: 'choice',
      at: 'variant.of',
      label: 'The dish of which it is a variant',
      value: variant.of,
      options: originals.map((other) => [other.id, quoted(other.name)] as const),
      choose: (of) => put({ of, fork: stepsOf(of)[0]?.id ?? variant.fork }),
    },
    ' up to ',
    {
      kind: 'choice',
      at: 'variant.fork',
      label: 'The last step that they share',
      value: variant.fork,
      options: stepsOf(variant.of).map((step) => [step.id, quoted(step.does || 'a step without words')] as const),
      choose: (fork) => put({ fork }),
    },
    ', and goes its own way from there. ',
    {
      kind: 'press',
      at: 'variant.away',
      label: 'It is a dish of its own after all',
      words: 'a dish of its own after all',
      press: () => set({ variant: undefined }),
    },
  ]
}

/** "Found at https://…" */
const sourceParts = (dish: Dish): Sentence => [
  'Found at ',
  {
    kind: 'text',
    at: 'source',
    label: 'Web address that it is from',
    text: dish.source ?? '',
    empty: 'no web address',
    write: (text) => {
      const source = text.trim()
      if (source === '') return set({ source: undefined })
      const whole = /^[a-z][a-z0-9+.-]*:/i.test(source) ? source : `https://${source}`
      return DishSchema.shape.source.safeParse(whole).success && /\w\.\w/.test(whole)
        ? set({ source: whole })
        : wrong('Write a web address that begins with https:// or http://.')
    },
  },
  '.',
]

/** All that the page says of a dish beside its method, its ingredients and its notes, under the headings where it stands. */
export const dishSentences = (dish: Dish, evening: Evening, scene: UseScene) => ({
  name: nameBlank(dish),
  portions: portionsParts(dish, evening.covers),
  done: [keepsParts(dish, scene), tableParts(dish), carryParts(dish, evening.host)],
  stands: [placeParts(dish, evening), variantParts(dish, evening)],
  found: [sourceParts(dish)],
})

/** Where the finished dish waits: at the hosts'. */
export const keepingScene = (evening: Evening, kitchens: string): UseScene => ({
  kitchen: evening.kitchens.find((kitchen) => kitchen.id === evening.host),
  kitchens,
  at: 'keeps.uses',
  named: (what) => `While it waits: ${what}`,
})
