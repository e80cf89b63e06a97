import type { Evening } from '#lib/domain/evening.ts'
import { type CourseCoverage, coverage, type Eater, type ForGuest, without } from './coverage.ts'
import { mainFoodOf, mainFoodsIn } from './main-foods.ts'
import { smallestSet, type Wish } from './smallest-set.ts'
import { PRICES, type TableChange } from './table-change.ts'
import type { Because, Verdict } from './verdict.ts'

interface Found {
  readonly key: string
  readonly change: TableChange
}

const keyed = (change: TableChange): Found => {
  const { guests: _guests, ...rest } = change
  const { needs: _needs, portions: _portions, look: _look, ...own } = { needs: null, portions: 0, look: null, ...rest }
  return { key: JSON.stringify(own), change }
}

/** The step before the one where it goes in, from which a variant could part; null when it goes in first, or nobody said where. */
const forkBefore = (evening: Evening, ingredient: string): string | null => {
  const own = evening.ingredients.find(({ id }) => id === ingredient)
  const steps = evening.steps.filter(({ dish }) => dish === own?.dish)
  const at = steps.findIndex(({ id }) => id === own?.step)
  const isVariant = evening.dishes.find(({ id }) => id === own?.dish)?.variant !== undefined
  return isVariant ? null : (steps[at - 1]?.id ?? null)
}

/** What answers one reason; null when nothing does. */
const answer = (evening: Evening, dish: string, guest: string, because: Because): TableChange | null | 'told' => {
  const guests = [guest]
  switch (because.kind) {
    case 'alcohol-kept':
    case 'dislikes':
      return 'told'
    case 'has': {
      const own = evening.ingredients.find(({ id }) => id === because.ingredient)
      const fork = forkBefore(evening, because.ingredient)
      const main = own ? mainFoodOf(own.food) : null
      const name = evening.dishes.find(({ id }) => id === dish)?.name ?? ''
      // A dish without what it is called after is another dish.
      if (!own || own.dish !== dish || fork === null || (main !== null && mainFoodsIn(name).includes(main))) return null
      return { kind: 'leave-out', dish, ingredient: own.id, needs: [because.need], guests, fork, portions: 1 }
    }
    case 'unknown':
    case 'label':
      return { kind: 'check', dish, ingredient: because.ingredient, look: because.look, guests }
    case 'silent':
    case 'name-says':
      return { kind: 'check', dish, ingredient: because.ingredient, look: because.trait === null ? [] : [because.trait], guests }
    case 'which':
      return { kind: 'check', dish, ingredient: because.ingredient, look: [because.trait], guests }
    case 'hidden':
      return { kind: 'ask-maker', dish, ingredient: because.ingredient, trait: because.trait, guests }
    case 'ask-guest':
      return { kind: 'ask-guest', guest, trait: because.trait, guests }
    case 'cooked-through':
      return { kind: 'cook-through', dish, ingredient: because.ingredient, guests }
    case 'beyond':
    case 'other-kitchen':
    case 'changed-since':
      return { kind: 'ask-cook', dish, needs: [because.need], guests }
    case 'no-ingredients':
      return { kind: 'write-ingredients', dish, guests }
    case 'not-asked':
      return { kind: 'ask-needs', guest, guests }
    case 'together':
      return null
  }
}

/** All that makes one dish right for one guest, each with its key; null when nothing does. */
const wayFor = (evening: Evening, dish: string, guest: string, verdict: Verdict): readonly Found[] | null => {
  const found: Found[] = []
  for (const because of verdict.because) {
    const change = answer(evening, dish, guest, because)
    if (change === null) return null
    if (change !== 'told') found.push(keyed(change))
  }
  for (const change of verdict.change ?? [])
    found.push(
      keyed(
        change.kind === 'guard'
          ? { kind: 'guard', dish, need: change.need, guests: [guest], portions: 1 }
          : {
              kind: 'swap',
              dish,
              ingredient: change.ingredient,
              food: change.food,
              needs: [change.need],
              guests: [guest],
              fork: forkBefore(evening, change.ingredient),
              portions: 1,
            },
      ),
    )
  return found
}

const union = <T>(a: readonly T[], b: readonly T[]): T[] => [...new Set([...a, ...b])]

/** One change of what several guests want of it. */
const merged = (a: TableChange, b: TableChange): TableChange => {
  const guests = union(a.guests, b.guests)
  const needs = 'needs' in a && 'needs' in b ? { needs: union(a.needs, b.needs) } : {}
  const look = a.kind === 'check' && b.kind === 'check' ? { look: union(a.look, b.look) } : {}
  const portions = 'portions' in a ? { portions: guests.length } : {}
  return { ...a, guests, ...needs, ...look, ...portions }
}

interface Lack {
  readonly course: string
  readonly guest: string
  readonly ways: readonly (readonly Found[])[]
}

const lackOf = (evening: Evening, course: string, { guest, dishes }: ForGuest): Lack => ({
  course,
  guest,
  ways: [
    ...dishes.flatMap(({ dish, verdict }) => {
      const way = wayFor(evening, dish, guest, verdict)
      return way === null ? [] : [way]
    }),
    [keyed({ kind: 'add-dish', course, guests: [guest] })],
  ],
})

/** The changes that guests' best dishes already ask for: who has something only with a change. */
const alreadyAsked = (evening: Evening, courses: readonly CourseCoverage[]): readonly Lack[] =>
  courses.flatMap(({ course, guests }) =>
    guests
      .filter(({ best }) => best?.verdict.kind === 'with-change')
      .map((one) => ({ ...lackOf(evening, course, one), ways: lackOf(evening, course, one).ways.slice(0, -1) })),
  )

/**
 * The smallest set of changes after which everybody who comes has something in every course that has dishes: the fewest dishes added, then
 * the fewest ingredients left out, then the fewest swaps, guards and longer cooking, then the fewest questions. Exact. A question's answer
 * may be no: then there is another smallest set. Who it is for stands with each.
 */
export const fewestChanges = (evening: Evening, eaters: readonly Eater[]): readonly TableChange[] => {
  const courses = coverage(evening, eaters)
  const lacks = [
    ...courses.flatMap((course) => without(course).map((one) => lackOf(evening, course.course, one))),
    ...alreadyAsked(evening, courses),
  ]
  const prices = new Map(lacks.flatMap(({ ways }) => ways.flat().map(({ key, change }) => [key, PRICES[change.kind]] as const)))
  const wishes: Wish[] = lacks.map(({ ways }) => ({ ways: ways.map((way) => way.map(({ key }) => key)) }))
  const chosen = smallestSet(wishes, (key) => prices.get(key) ?? 0)
  const found = new Map<string, TableChange>()
  for (const { ways } of lacks) {
    // The way that is wholly chosen is the one that this guest gets.
    const way = ways.find((one) => one.every(({ key }) => chosen.has(key)))
    for (const { key, change } of way ?? []) {
      const before = found.get(key)
      found.set(key, before ? merged(before, change) : change)
    }
  }
  return [...found.values()].toSorted((a, b) => PRICES[b.kind] - PRICES[a.kind])
}
