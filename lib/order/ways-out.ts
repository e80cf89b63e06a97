import { durationOfTicks } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Clash, Remedy, RunningOrder } from '#lib/domain/running-order.ts'
import { breaches } from '#lib/scheduling/breaches.ts'
import { fightOf } from '#lib/scheduling/fight.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { inKitchen, type KitchenFight, ofClash } from './fight-in-kitchen.ts'
import { toHint } from './hint.ts'
import { isAlone, laddersFor, NOTICED, takesPart } from './remedies.ts'
import { breachKey, clashKey, type Outcome, outcomeOf } from './replan.ts'
import { saidOf } from './said.ts'
import { type ProblemOptions, toProblem } from './to-problem.ts'
import { climb, openTries, type Tries } from './ways-out-tries.ts'

export interface WaysOptions extends ProblemOptions {
  /** Steps for the whole of it. */
  readonly budget: Budget
}

/** Enough for some two clashes that have nothing to do with each other. */
export const WAYS_STEPS = 120_000

/** More than these nobody reads. */
const MOST_WAYS = 4
/** Of a clash's steps, what may go into finding out what fights. */
const FIGHT_SHARE = 0.4

/**
 * The order with the ways out of its clashes, each with what fights there named. A change is listed only after planning again
 * with it, once from this order and once from nothing: its clash was gone, so was what fights with it, and no other was new or
 * worse. One of each kind, by the smallest amount that helps; what the guests would notice least comes first, then what costs
 * fewer minutes at the table. The same evening, order, seed and steps give the same, unless `budget.stop` ended it.
 */
export const withWaysOut = (evening: Evening, order: RunningOrder, { budget, ...options }: WaysOptions): RunningOrder => {
  if (order.clashes.length === 0) return order
  const tries = openTries(evening, order, options, budget)
  const asked: Asked = { evening, order, options, tries, before: outcomeOf(order) }
  const fights: KitchenFight[] = []
  const clashes = order.clashes.map((clash, at): Clash => {
    const steps = tries.share(order.clashes.length - at) * FIGHT_SHARE
    const known = fights.find((fight) => takesPart(clash, fight))
    const fight = known ?? fightFor(asked, clash, { ...budget, steps })
    if (fight && !known) fights.push(fight)
    return { ...(fight ? named(asked, clash, fight) : clash), ways: waysOf(asked, clash, fight ?? loose(evening, clash)) }
  })
  return { ...order, clashes }
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
  const breach = breaches(problem, schedule).find((one) => breachKey(index, one) === clashKey(clash))
  if (!breach) return null
  tries.spend(budget.steps)
  const fight = fightOf(problem, schedule, breach, budget)
  return fight.length > 0 ? inKitchen(problem, index, fight) : null
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

const waysOf = (asked: Asked, clash: Clash, fight: KitchenFight): Remedy[] => {
  const { evening, order, options, tries, before } = asked
  const gone = [clash, ...order.clashes.filter((other) => takesPart(other, fight))].map(clashKey)
  const helps = ({ clashes }: Outcome) =>
    gone.every((key) => !clashes.has(key)) && [...clashes].every(([key, by]) => by <= (before.clashes.get(key) ?? 0))
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
    ways.push({ ...found.change, missed: durationOfTicks(ticks), said: saidOf(evening, found.change), ticks })
  }
  return ways.sort((a, b) => NOTICED[a.kind] - NOTICED[b.kind] || a.ticks - b.ticks).map(({ ticks: _, ...way }) => way)
}
