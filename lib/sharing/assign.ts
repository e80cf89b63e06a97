import type { Evening } from '#lib/domain/evening.ts'
import { canDoBoth } from './at-once.ts'
import { type AtTable, missedMinutes } from './missed.ts'
import type { Work } from './work.ts'

/** Who does each step first of all: by index of the work. */
export type Mains = readonly (string | null)[]

/**
 * What a sharing out costs beside the minutes that are missed at the table and those by which the work is uneven: common
 * practice, no source. Hands that change within a dish or a course must explain each other; somebody who leads a course plates it; and the running order's own choice is the
 * better of two that are alike, for it knows more than this does.
 */
const PRICE = { handOverInDish: 12, apart: 5, handOverInCourse: 4, unplated: 10, unlike: 0.1, watchedMinute: 0.5 } as const

const effortOf = ({ minutes, watched }: Work): number => minutes + PRICE.watchedMinute * watched

/** Who stands at a step that this cook mainly does: where it takes several, the others stay. */
export const teamOf = ({ team }: Work, main: string | null): readonly string[] => {
  if (main === null) return []
  return team.includes(main) ? [main, ...team.filter((cook) => cook !== main)] : [main, ...team.slice(1)]
}

/** Minutes of effort that would be even: each step's, shared by those who are where it is done then. */
export const fairEffort = (work: readonly Work[], cooks: readonly string[]): ReadonlyMap<string, number> => {
  const fair = new Map(cooks.map((cook) => [cook, 0]))
  for (const one of work) {
    const among = one.able.length > 0 ? one.able : one.team
    for (const cook of among) fair.set(cook, (fair.get(cook) ?? 0) + effortOf(one) / among.length)
  }
  return fair
}

/** How often each cook is named. */
const tally = (mains: Mains, steps: readonly number[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>()
  for (const at of steps) {
    const main = mains[at] ?? null
    if (main !== null) counts.set(main, (counts.get(main) ?? 0) + 1)
  }
  return counts
}

const handsCost = ({ dishes, courses }: Scene, mains: Mains): number => {
  let cost = 0
  for (const dish of dishes) {
    const counts = tally(mains, dish)
    if (counts.size < 2) continue
    const most = Math.max(...counts.values())
    cost += PRICE.handOverInDish * (counts.size - 1) + PRICE.apart * (dish.length - most)
  }
  for (const course of courses) cost += PRICE.handOverInCourse * Math.max(0, tally(mains, course).size - 1)
  return cost
}

interface Scene {
  readonly work: readonly Work[]
  readonly cooks: readonly string[]
  readonly eating: readonly string[]
  readonly fair: ReadonlyMap<string, number>
  readonly window: AtTable
  readonly leads: ReadonlyMap<string, string>
  readonly dishes: readonly (readonly number[])[]
  readonly courses: readonly (readonly number[])[]
  /** By index: the pieces for which somebody may be missed at the table. */
  readonly seen: readonly Work['pieces'][]
  /** By index: the work that nobody can do at the same time. */
  readonly clashing: readonly (readonly number[])[]
}

const costOf = (scene: Scene, mains: Mains): number => {
  const { work, cooks, eating, fair, window, leads } = scene
  let cost = handsCost(scene, mains)
  const effort = new Map<string, number>()
  const up = new Map<string, Work['pieces'][number][]>(eating.map((cook) => [cook, []]))
  for (const [at, one] of work.entries()) {
    const main = mains[at] ?? null
    if (main === null) continue
    effort.set(main, (effort.get(main) ?? 0) + effortOf(one))
    const seen = scene.seen[at] ?? []
    if (seen.length > 0) for (const cook of teamOf(one, main)) up.get(cook)?.push(...seen)
    if (one.team.length > 0 && !one.team.includes(main)) cost += PRICE.unlike * effortOf(one)
    const lead = one.course === null ? undefined : leads.get(one.course)
    if (one.plates && lead !== undefined && lead !== main) cost += PRICE.unplated
  }
  for (const cook of cooks) cost += Math.abs((effort.get(cook) ?? 0) - (fair.get(cook) ?? 0))
  const missed = [...up.values()].map((pieces) => missedMinutes(pieces, window))
  const mean = missed.reduce((sum, minutes) => sum + minutes, 0) / Math.max(1, missed.length)
  return cost + missed.reduce((sum, minutes) => sum + minutes + Math.abs(minutes - mean), 0)
}

const groupsBy = (work: readonly Work[], of: (one: Work) => string | null): readonly (readonly number[])[] => {
  const groups = new Map<string, number[]>()
  for (const [at, one] of work.entries()) {
    const key = of(one)
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), at])
  }
  return [...groups.values()]
}

/** What of this cook's would have to go first for the step to be theirs. */
const inTheWay = ({ work, clashing }: Scene, mains: Mains, at: number, cook: string): readonly number[] =>
  (clashing[at] ?? []).filter((other) => {
    const one = work[other]
    return one !== undefined && teamOf(one, mains[other] ?? null).includes(cook)
  })

/** Gives one step to a cook; what this cook cannot do at the same time goes to whom it comes from, or else to who can take it. */
const handed = (scene: Scene, mains: Mains, at: number, cook: string): Mains | null => {
  const { work, cooks } = scene
  const one = work[at]
  const former = mains[at] ?? null
  if (!one || one.held !== null || former === cook || !one.able.includes(cook)) return null
  const next = [...mains]
  next[at] = cook
  for (const other of inTheWay(scene, mains, at, cook)) {
    const pushed = work[other]
    if (!pushed || pushed.held !== null || mains[other] !== cook) return null
    const taker = [former, ...cooks].find(
      (each) => each !== null && each !== cook && pushed.able.includes(each) && inTheWay(scene, next, other, each).length === 0,
    )
    if (!taker) return null
    next[other] = taker
  }
  // Where two stand at a step, the one who is relieved of leading it may be at it still.
  return inTheWay(scene, next, at, cook).length > 0 ? null : next
}

/** Gives what is possible of these steps to a cook; null when that is nothing. */
const given = (scene: Scene, mains: Mains, steps: readonly number[], cook: string): Mains | null => {
  let next: Mains | null = null
  for (const at of steps) next = handed(scene, next ?? mains, at, cook) ?? next
  return next
}

/** As the running order has it; a step whose batches it gives to several goes to one who can do them all. */
const begun = (scene: Scene): Mains => {
  const { work, cooks } = scene
  const first = (one: Work): string | null => one.held ?? one.team.find((cook) => one.able.includes(cook)) ?? one.able[0] ?? null
  let mains: Mains = work.map((one) => (one.isParted && one.held === null ? null : first(one)))
  for (const [at, one] of work.entries()) {
    if (mains[at] !== null) continue
    const tries = [...one.team, ...cooks].map((cook) => handed(scene, mains, at, cook))
    mains = tries.find((next) => next !== null) ?? mains.map((main, index) => (index === at ? first(one) : main))
  }
  return mains
}

const MOST_ROUNDS = 12

/**
 * Who does what, begun from the running order's own choice and bettered by giving whole courses, then dishes, then single
 * steps to another cook as long as that lowers the price: hill climbing, always in the same order. Before and after:
 * nobody is given a step of a kitchen they are not in then, nor two at once, but for batches that nobody can do alone.
 */
export const assign = (evening: Evening, work: readonly Work[], window: AtTable): Mains => {
  const cooks = evening.cooks.map(({ id }) => id)
  const dishes = groupsBy(work, ({ dish }) => dish)
  const courses = groupsBy(work, ({ course }) => course)
  const scene: Scene = {
    work,
    cooks,
    eating: evening.cooks.filter(({ eats }) => eats).map(({ id }) => id),
    fair: fairEffort(work, cooks),
    window,
    leads: new Map(evening.courses.flatMap(({ id, lead }) => (lead === undefined ? [] : [[id, lead]]))),
    dishes,
    courses,
    seen: work.map(({ pieces }) => pieces.filter(({ from, to }) => to > window.from && from < window.to)),
    clashing: work.map((one, at) => work.flatMap((other, index) => (index !== at && !canDoBoth(one, other) ? [index] : []))),
  }
  const units = [...courses, ...dishes, ...work.map((_, at) => [at])]
  let mains = begun(scene)
  let cost = costOf(scene, mains)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = cost
    for (const unit of units)
      for (const cook of cooks) {
        const next = given(scene, mains, unit, cook)
        const price = next === null ? cost : costOf(scene, next)
        if (next === null || price >= cost - 1e-6) continue
        mains = next
        cost = price
      }
    if (cost >= before - 1e-6) break
  }
  return mains
}
