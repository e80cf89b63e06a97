import { means, type Parts, type Said, wrong } from '#app/_ui/parts.ts'
import { stateWords } from '#app/_words/care.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { shorten } from '#app/_words/shorten.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Patch } from '#lib/plan/commands/set.ts'
import { type DishEdit, meansFields } from './dish-edit.ts'

const NONE = ''
const quoted = (text: string): string => `“${shorten(text, 40)}”`

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
export const placeParts = (dish: Dish, evening: Pick<Evening, 'courses' | 'kitchens' | 'dishes'>): Parts<DishEdit> => [
  'It is ',
  {
    kind: 'choice',
    at: 'state',
    label: 'On the menu or not',
    value: dish.state,
    options: Object.entries<string>(stateWords),
    choose: (state) => meansFields({ state: state as Dish['state'] }),
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
    choose: (standIn) => meansFields({ standIn: standIn === NONE ? undefined : standIn }),
  },
  '.',
]

/** "For 2 it is what “Stew” is up to “Base”, and goes its own way from there." For a variant. */
export const variantParts = (dish: Dish, evening: Pick<Evening, 'dishes' | 'steps'>): Parts<DishEdit> => {
  const { variant } = dish
  if (!variant) return []
  const put = (next: Partial<NonNullable<Dish['variant']>>, more: Patch<'dishes'> = {}): Said<DishEdit> =>
    meansFields({ variant: { ...variant, ...next }, ...more })
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
      press: () => meansFields({ variant: undefined }),
    },
  ]
}
