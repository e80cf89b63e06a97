import { durationOfTicks } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Clash, Remedy, RunningOrder } from '#lib/domain/running-order.ts'
import { breaches } from '#lib/scheduling/breaches.ts'
import { fightOf } from '#lib/scheduling/fight.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { inKitchen, type KitchenFight, ofClash, takesPart } from './fight-in-kitchen.ts'
import { toHint } from './hint.ts'
import { isAlone, laddersFor, NOTICED } from './remedies.ts'
import { clashKey, gather, lagKey, type Outcome, outcomeOf, wishName } from './replan.ts'
import { saidOf } from './said.ts'
import { type ProblemOptions, toProblem } from './to-problem.ts'
import { climb, openTries, type Tries, WAYS_STEPS } from './ways-out-tries.ts'

export { WAYS_STEPS }

export interface WaysOptions extends ProblemOptions {
  /** Steps for the whole of it. */
  readonly budget: Budget
}

/** More than these nobody reads. */
const MOST_WAYS = 4
/** Of a clash's steps, what may go into finding out what fights. */
const FIGHT_SHARE = 0.4

/**
 * The order with the ways out of its clashes, each with what fights there named. A change is listed only after planning again
 * with it, from this order and twice from nothing: its clash was gone, so was what fights with it, and no other was new or
 * worse. One of each kind, by the smallest amount that helps; what the guests would notice least comes first, then what costs
 * fewer minutes at the table. The same evening, order, seed and steps give the same, unless `budget.stop` ended it.
 */
export const withWaysOut = (evening: Evening, order: RunningOrder, { budget, ...options }: WaysOptions): RunningOrder => {
  if (order.clashes.length === 0) return order
  const tries = openTries(evening, order, options, budget)
  const asked: Asked = { evening, order, options, tries, before: outcomeOf(order) }
  const fights = fightsOf(asked, budget)
  const clashes = order.clashes.map((clash, at): Clash => {
    tries.share(order.clashes.length - at)
    const fight = fights.find((one) => takesPart(clash, one))
    return {
      ...(fight ? named(asked, clash, fight) : clash),
      ways: waysOf(asked, clash, fight ?? loose(evening, clash), fights),
    }
  })
  return { ...order, clashes }
}

/** What fights, each fight once, as far as it was found. */
const fightsOf = (asked: Asked, budget: Budget): KitchenFight[] => {
  const fights: KitchenFight[] = []
  for (const [at, clash] of asked.order.clashes.entries()) {
    const steps = ((budget.steps - asked.tries.spent()) * FIGHT_SHARE) / (asked.order.clashes.length - at)
    if (fights.some((fight) => takesPart(clash, fight))) continue
    const fight = fightFor(asked, clash, { ...budget, steps })
    if (fight) fights.push(fight)
  }
  return fights
}

interface Asked {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly options: ProblemOptions
  readonly tries: Tries
  readonly before: Outcome
}

/** What fights where a wish is broken; null when nothing was found, or a step is left out. */
const fightFor = ({ evening, order, options, tries }: Asked, clash: Clash, budget: Budget): KitchenFight | null => {
  const { problem, index } = toProblem(evening, options)
  const schedule = toHint(problem, index, order)
  const breach = breaches(problem, schedule).find((one) => wishName(index, one) === clashKey(clash))
  if (!breach) return null
  const { demands, steps } = fightOf(problem, schedule, breach, budget)
  tries.spend(steps)
  return demands.length > 0 ? inKitchen(problem, index, demands) : null
}

/** Where no fight is known, all that the clash names may be the reason. */
const loose = (evening: Evening, clash: Clash): KitchenFight =>
  ofClash(clash, evening.kitchens.flatMap(({ kit }) => kit).find(({ id }) => id === clash.kit)?.kind ?? null)

/** The clash with all who take part in its fight, first its own steps; who holds the kit comes next after a lag's two, else last. */
const named = ({ evening, order, options }: Asked, clash: Clash, fight: KitchenFight): Clash => {
  const own = clash.steps.filter((step, at) =>
    clash.kind === 'lag' ? at < 2 : clash.kind === 'wait' || clash.kind === 'sit-down' || fight.steps.includes(step),
  )
  const others = fight.steps.filter((step) => !own.includes(step))
  const holds = (step: string) => fight.kit.some(({ by }) => 'step' in by && by.step === step)
  const [holders, rest] = [others.filter(holds), others.filter((step) => !holds(step))]
  const kits = new Map(toProblem(evening, options).problem.kit.map((kit) => [kit.id, kit.kind === 'store' ? kit.of : kit.kind]))
  const held = fight.kit.flatMap(({ by, of }) =>
    'step' in by
      ? order.cues.filter(({ step }) => step === by.step).flatMap(({ kit }) => kit.filter(({ id }) => kits.get(id) === of))
      : [],
  )
  return {
    ...clash,
    steps: clash.kind === 'lag' ? [...own, ...holders, ...rest] : [...own, ...rest, ...holders],
    kit: held[0]?.id ?? null,
  }
}

/**
 * Whether these clashes are gone and nothing else is broken worse. One fight may come out another way at the same price, so
 * what belongs to one is counted together, and where none is known what belongs to one dish: of what was theirs less is broken,
 * as another clash in their place is no way out.
 */
const isGone = ({ evening, before }: Asked, gone: readonly string[], fights: readonly KitchenFight[]) => {
  const groups = new Map([
    ...evening.steps.flatMap(({ id, dish, after }) => after.map((one) => [lagKey(one.step, id), dish] as const)),
    ...evening.dishes.flatMap(({ id }) => [`keeps ${id}`, `carry ${id}`].map((key) => [key, id] as const)),
    ...fights.flatMap(({ keys }) => keys.map((key) => [key, keys.join()] as const)),
  ])
  const groupOf = (key: string) => groups.get(key) ?? key
  const sums = ({ clashes }: Outcome) => gather([...clashes].map(([key, by]) => [groupOf(key), by] as const))
  const now = sums(before)
  const theirs = new Set(gone.map(groupOf))
  return (outcome: Outcome): boolean => {
    const isNoWorse = ([group, by]: readonly [string, number]) => {
      const was = now.get(group) ?? 0
      return theirs.has(group) ? by < was : by <= was
    }
    return gone.every((key) => !outcome.clashes.has(key)) && [...sums(outcome)].every(isNoWorse)
  }
}

/** Ways out of all that a clash fights with; failing these, of the clash alone. None of what is on or over: that is as it is. */
const waysOf = (asked: Asked, clash: Clash, fight: KitchenFight, fights: readonly KitchenFight[]): Remedy[] => {
  if (clash.steps.length > 0 && clash.steps.every((step) => hasBegun(asked.order, step))) return []
  const own = clashKey(clash)
  const all = asked.order.clashes.filter((other) => takesPart(other, fight)).map(clashKey)
  const ways = climbed(asked, clash, fight, isGone(asked, [own, ...all], fights))
  return ways.length > 0 || all.length < 2 ? ways : climbed(asked, clash, fight, isGone(asked, [own], fights))
}

const hasBegun = ({ cues }: RunningOrder, step: string): boolean =>
  cues.some((cue) => cue.step === step && (cue.state === 'running' || cue.state === 'done'))

/** What the ladders lead to, one way of each kind. */
const climbed = (asked: Asked, clash: Clash, fight: KitchenFight, helps: (outcome: Outcome) => boolean): Remedy[] => {
  const { evening, order, options, tries, before } = asked
  const ways: (Remedy & { readonly ticks: number })[] = []
  for (const ladder of laddersFor({ evening, order, clash, fight, ...(options.now ? { now: options.now } : {}) })) {
    const [{ kind }] = ladder
    if (ways.length >= MOST_WAYS || tries.isOver()) break
    if (ways.some((way) => way.kind === kind)) continue
    // That a course is not served at all is the last thing to say.
    if (ladder[0].kind === 'drop' && ways.length > 0 && isAlone(evening, ladder[0].dish)) continue
    const found = climb(tries, ladder, helps)
    if (!found) continue
    const ticks = Math.max(0, found.missed - before.missed)
    ways.push({ ...found.change, missed: durationOfTicks(ticks), said: saidOf(evening, found.change, found), ticks })
  }
  return ways.sort((a, b) => NOTICED[a.kind] - NOTICED[b.kind] || a.ticks - b.ticks).map(({ ticks: _, ...way }) => way)
}
