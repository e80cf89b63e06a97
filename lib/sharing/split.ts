import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { assign, fairEffort, type Mains, teamOf } from './assign.ts'
import { canDoBoth } from './at-once.ts'
import { type AtTable, atTable, missedMinutes } from './missed.ts'
import { type Work, workOf } from './work.ts'

/** Why a part of the work would go to its cook. */
export type PartReason =
  /** Nobody else is where it is done then. */
  | { readonly kind: 'only-one-there' }
  /** Has the rest of it already. */
  | { readonly kind: 'has-the-rest' }
  | { readonly kind: 'leads'; readonly course: string }
  /** The running order gives this cook half of its steps or more anyway. */
  | { readonly kind: 'planned-so'; readonly steps: number; readonly of: number }
  /** Of those who could, has least to do without it. */
  | { readonly kind: 'has-least' }

/** A step of the part that goes to somebody else, and why. */
export interface Exception {
  readonly step: string
  readonly cook: string
  readonly because:
    | { readonly kind: 'not-there'; readonly cook: string }
    | { readonly kind: 'busy'; readonly cook: string; readonly step: string }
    | { readonly kind: 'evener' }
}

export interface WantedClaim {
  readonly target: string
  readonly cook: string
}

/** A part of a suggested sharing out, to be taken or left as a whole. */
export interface Part {
  readonly key: string
  readonly of:
    | { readonly kind: 'course'; readonly course: string }
    | { readonly kind: 'dish'; readonly dish: string }
    | { readonly kind: 'chores'; readonly steps: readonly string[] }
  readonly cook: string
  /** Hands-on minutes of this cook in it, and of keeping an eye. */
  readonly minutes: number
  readonly watched: number
  readonly because: readonly PartReason[]
  readonly but: readonly Exception[]
  /** What taking it claims, none of which anybody has. */
  readonly claims: readonly WantedClaim[]
}

export interface CookShare {
  readonly cook: string
  /** Hands-on minutes and minutes of keeping an eye that are theirs when every part is taken. */
  readonly minutes: number
  readonly watched: number
  /** Hands-on minutes that are theirs already. */
  readonly before: number
  /** Minutes up from the table with every part taken, at the order's times; null: does not eat. */
  readonly missed: number | null
  /** What an even share of the effort would be, among those who are there when it is wanted. */
  readonly even: number
}

/** A suggested sharing out of all that nobody has. */
export interface Split {
  readonly parts: readonly Part[]
  readonly cooks: readonly CookShare[]
  /** Steps that nobody has and for which the running order has no place: they cannot be given to anybody. */
  readonly unplaced: readonly string[]
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0)

interface Scene {
  readonly evening: Evening
  readonly work: readonly Work[]
  readonly mains: Mains
}

/** Who does most of these steps, by how many, then by minutes, then by id. */
const mainOf = ({ mains, work }: Scene, steps: readonly number[]): string | null => {
  const tally = new Map<string, { minutes: number; steps: number }>()
  for (const at of steps) {
    const main = mains[at] ?? null
    const one = work[at]
    if (main === null || !one) continue
    const before = tally.get(main) ?? { minutes: 0, steps: 0 }
    tally.set(main, { minutes: before.minutes + one.minutes + one.watched / 2, steps: before.steps + 1 })
  }
  const [first] = [...tally].sort(([a, x], [b, y]) => y.steps - x.steps || y.minutes - x.minutes || (a < b ? -1 : 1))
  return first?.[0] ?? null
}

const exceptionOf = (scene: Scene, at: number, main: string): Exception | null => {
  const { work, mains } = scene
  const one = work[at]
  const cook = mains[at] ?? null
  if (!one || cook === null || cook === main) return null
  if (!one.able.includes(main)) return { step: one.step, cook, because: { kind: 'not-there', cook: main } }
  const busy = work.find((other, index) => index !== at && mains[index] === main && !canDoBoth(other, one))
  return {
    step: one.step,
    cook,
    because: busy ? { kind: 'busy', cook: main, step: busy.step } : { kind: 'evener' },
  }
}

/** Steps that nobody stands at go with the rest: they are no exception. */
const isWork = (one: Work | undefined): boolean => one !== undefined && one.pieces.length > 0

const partOf = (scene: Scene, of: Part['of'], target: string | null, steps: readonly number[], cook: string): Part => {
  const { work, evening } = scene
  const but = steps.flatMap((at) => {
    const exception = isWork(work[at]) ? exceptionOf(scene, at, cook) : null
    return exception ? [exception] : []
  })
  const own = steps.flatMap((at) => {
    const one = work[at]
    return one && !but.some(({ step }) => step === one.step) ? [one] : []
  })
  const theirs = own.filter(isWork)
  const effort = effortBut(scene, steps)
  const could = evening.cooks.map(({ id }) => id).filter((id) => theirs.every((one) => one.able.includes(id)))
  const planned = theirs.filter((one) => one.team.includes(cook)).length
  const lead = of.kind === 'course' ? of.course : of.kind === 'dish' ? own[0]?.course : undefined
  const because: PartReason[] = []
  if (theirs.length > 0 && could.length === 1) because.push({ kind: 'only-one-there' })
  if (lead && evening.courses.some(({ id, lead: leads }) => id === lead && leads === cook))
    because.push({ kind: 'leads', course: lead })
  if (work.some((one) => one.held === cook && belongsTo(one, of))) because.push({ kind: 'has-the-rest' })
  if (planned * 2 >= theirs.length && planned > 0) because.push({ kind: 'planned-so', steps: planned, of: theirs.length })
  if (could.length > 1 && could.every((id) => id === cook || (effort.get(cook) ?? 0) < (effort.get(id) ?? 0)))
    because.push({ kind: 'has-least' })
  return {
    key: target ?? `chores.${cook}`,
    of,
    cook,
    minutes: sum(own.map(({ minutes }) => minutes)),
    watched: sum(own.map(({ watched }) => watched)),
    because,
    but,
    claims: [
      ...(target === null ? own.map((one) => ({ target: one.step, cook })) : [{ target, cook }]),
      ...but.map((each) => ({ target: each.step, cook: each.cook })),
    ],
  }
}

const belongsTo = (one: Work, of: Part['of']): boolean =>
  of.kind === 'dish' ? one.dish === of.dish : of.kind === 'course' && one.course === of.course

/** What everybody has to do without these steps. */
const effortBut = ({ work, mains }: Scene, steps: readonly number[]): ReadonlyMap<string, number> => {
  const effort = new Map<string, number>()
  for (const [at, one] of work.entries()) {
    const main = mains[at] ?? null
    if (main !== null && !steps.includes(at)) effort.set(main, (effort.get(main) ?? 0) + one.minutes + one.watched / 2)
  }
  return effort
}

const partsOf = (scene: Scene): readonly Part[] => {
  const { evening, work } = scene
  const claimed = new Set(evening.claims.map(({ target }) => target))
  const open = (is: (one: Work) => boolean): number[] => work.flatMap((one, at) => (one.held === null && is(one) ? [at] : []))
  const parts: Part[] = []
  for (const course of [...evening.courses].sort(bySiblingOrder)) {
    const dishes = evening.dishes
      .filter((dish) => dish.course === course.id && dish.state === 'on' && !claimed.has(dish.id))
      .sort(bySiblingOrder)
      .map((dish) => ({ dish, steps: open((one) => one.dish === dish.id) }))
      .filter(({ steps }) => steps.length > 0)
    const all = dishes.flatMap(({ steps }) => steps)
    const mains = dishes.map(({ steps }) => mainOf(scene, steps))
    const [first] = mains
    if (dishes.length > 1 && first && mains.every((main) => main === first)) {
      parts.push(partOf(scene, { kind: 'course', course: course.id }, course.id, all, first))
      continue
    }
    for (const [at, { dish, steps }] of dishes.entries()) {
      const main = mains[at]
      if (main) parts.push(partOf(scene, { kind: 'dish', dish: dish.id }, dish.id, steps, main))
    }
  }
  for (const { id: cook } of evening.cooks) {
    const chores = open((one) => one.dish === null).filter((at) => scene.mains[at] === cook)
    const steps = chores.flatMap((at) => work[at]?.step ?? [])
    if (chores.length > 0) parts.push(partOf(scene, { kind: 'chores', steps }, null, chores, cook))
  }
  return parts
}

const shareOf = ({ work, mains, evening }: Scene, cook: string, even: number, window: AtTable): CookShare => {
  const own = work.filter((_, at) => mains[at] === cook)
  const eats = evening.cooks.find(({ id }) => id === cook)?.eats ?? false
  const pieces = work.flatMap((one, at) => (teamOf(one, mains[at] ?? null).includes(cook) ? one.pieces : []))
  return {
    cook,
    minutes: sum(own.map(({ minutes }) => minutes)),
    watched: sum(own.map(({ watched }) => watched)),
    before: sum(own.filter(({ held }) => held !== null).map(({ minutes }) => minutes)),
    missed: eats ? missedMinutes(pieces, window) : null,
    even,
  }
}

/**
 * A sharing out of everything that nobody has: whole courses and dishes where that keeps hands together, even among those
 * who are there when it is wanted. It takes no claim away, and gives nobody a step in a kitchen they are not in then. The
 * same evening and order give the same answer.
 */
export const suggestSplit = (evening: Evening, order: RunningOrder): Split => {
  const { work, unplaced } = workOf(evening, order)
  const window = atTable(evening, order)
  const mains = assign(evening, work, window)
  const scene: Scene = { evening, work, mains }
  const cooks = evening.cooks.map(({ id }) => id)
  const even = fairEffort(work, cooks)
  return {
    parts: partsOf(scene),
    cooks: cooks.map((cook) => shareOf(scene, cook, even.get(cook) ?? 0, window)),
    unplaced,
  }
}
