import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Guest } from '#lib/domain/people.ts'
import { dishVerdict, itemsOf } from './dish-verdict.ts'
import { judgeItem } from './judge-item.ts'
import { surelyHas } from './judge-plate.ts'
import { awayOf, sameNeed } from './need.ts'
import type { Trait } from './trait.ts'
import { byStanding, isSomething, type Verdict } from './verdict.ts'

/** What coverage has to know of a guest. */
export type Eater = Pick<Guest, 'id' | 'reply' | 'needs' | 'drinks' | 'child'>

export interface ForGuest {
  readonly guest: string
  /** Every dish of the course that is on, in its order. */
  readonly dishes: readonly { readonly dish: string; readonly verdict: Verdict }[]
  /** The best of them; null in a course without dishes. */
  readonly best: { readonly dish: string; readonly verdict: Verdict } | null
}

export interface CourseCoverage {
  readonly course: string
  /** Everybody who has not said no, in the guests' order. */
  readonly guests: readonly ForGuest[]
}

/** The dishes of a course that are on, in their order. */
export const dishesOn = ({ dishes }: Evening, course: string): readonly Dish[] =>
  dishes.filter((dish) => dish.course === course && dish.state === 'on')

/** Who comes, or may come. */
export const comingOf = <T extends Pick<Guest, 'reply'>>(eaters: readonly T[]): readonly T[] =>
  eaters.filter(({ reply }) => reply !== 'no')

const dislikes = ({ because }: Verdict): number => (because.some(({ kind }) => kind === 'dislikes') ? 1 : 0)

/** The better standing, then what they would not rather leave, then the earlier. */
const best = (dishes: ForGuest['dishes']): ForGuest['best'] =>
  dishes.toSorted((a, b) => byStanding(a.verdict.kind, b.verdict.kind) || dislikes(a.verdict) - dislikes(b.verdict))[0] ?? null

const hasTrait = (evening: Evening, dish: Dish, traits: readonly Trait[]): boolean => {
  const { sure, loose } = itemsOf(evening, dish)
  return [...sure, ...loose].some((item) => traits.some((trait) => surelyHas(item, trait, evening.rules)))
}

/** A food with alcohol is told to who drinks none, whether or not they have called it a need. */
const withAlcoholTold = (evening: Evening, dish: Dish, eater: Eater, verdict: Verdict): Verdict => {
  if (eater.drinks !== 'none' && !eater.child) return verdict
  if (verdict.because.some(({ kind }) => kind === 'alcohol-kept')) return verdict
  const need = { need: 'alcohol', grade: 'avoids' } as const
  const away = awayOf('alcohol', evening.rules)
  const told = itemsOf(evening, dish).sure.flatMap((item) => judgeItem(item, need, away, evening.rules).told)
  return told.length === 0 ? verdict : { ...verdict, because: [...verdict.because, ...told] }
}

const guestAt = (evening: Evening, course: string, eater: Eater, isOut: (dish: Dish) => boolean): ForGuest => {
  const dishes = dishesOn(evening, course).map((dish) => {
    const verdict = withAlcoholTold(evening, dish, eater, dishVerdict(evening, dish, eater.needs))
    return {
      dish: dish.id,
      verdict: isOut(dish)
        ? ({ kind: 'does-not', because: [{ kind: 'together', need: 'kosher', source: 'kosher-basics' }] } satisfies Verdict)
        : verdict,
    }
  })
  return { guest: eater.id, dishes, best: best(dishes) }
}

const keepsKosher = ({ needs }: Eater): boolean =>
  (needs ?? []).some(({ need, grade }) => sameNeed(need) === 'kosher' && grade !== 'dislikes')

const NONE_OUT = () => false

/** A guest's courses: who keeps kosher has no meat and milk at one meal, so the side that leaves more of it is kept. */
const guestThrough = (evening: Evening, eater: Eater): readonly ForGuest[] => {
  const through = (isOut: (dish: Dish) => boolean) => evening.courses.map(({ id }) => guestAt(evening, id, eater, isOut))
  if (!keepsKosher(eater)) return through(NONE_OUT)
  const has = (...traits: readonly Trait[]) =>
    new Set(evening.dishes.filter((dish) => hasTrait(evening, dish, traits)).map(({ id }) => id))
  const [meat, milk] = [has('meat', 'poultry'), has('milk')]
  const sides = [through(({ id }) => milk.has(id)), through(({ id }) => meat.has(id))]
  const left = (side: readonly ForGuest[]) =>
    side.filter((one) => one.best !== null && one.best.verdict.kind !== 'does-not').length
  const [withMeat, withMilk] = [sides[0] ?? [], sides[1] ?? []]
  return left(withMeat) >= left(withMilk) ? withMeat : withMilk
}

/**
 * For every course, every guest who comes or may come: each dish's verdict and the best of them. A course of the children's own is
 * theirs alone, once somebody who comes is known to be a child.
 */
export const coverage = (evening: Evening, eaters: readonly Eater[]): readonly CourseCoverage[] => {
  const coming = comingOf(eaters)
  const hasChild = coming.some(({ child }) => child)
  const guests = coming.map((eater) => ({ eater, through: guestThrough(evening, eater) }))
  return evening.courses.map(({ id, children }, at) => ({
    course: id,
    guests: guests.flatMap(({ eater, through }) => {
      const here = through[at]
      return here && (eater.child || !children || !hasChild) ? [here] : []
    }),
  }))
}

/** The guests without something in a course that has dishes. */
export const without = ({ guests }: CourseCoverage): readonly ForGuest[] =>
  guests.filter(({ best: found }) => found !== null && !isSomething(found.verdict))
