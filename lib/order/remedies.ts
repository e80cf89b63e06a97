import type { At } from '#lib/domain/atoms.ts'
import { coldWayOf } from '#lib/domain/bring-cold.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, msOfInstant, wallTimeOfMs } from '#lib/domain/time.ts'
import type { Change } from './apply-remedy.ts'
import { gatherFacts } from './facts.ts'
import { type KitchenFight, takesPart } from './fight-in-kitchen.ts'
import { byText } from './ids.ts'

/**
 * What the guests would notice, least first: nothing (another way, ahead, another oven, another cook), a darker or paler
 * crust, food past its best, a longer wait, a dish that is missing.
 */
export const NOTICED: Readonly<Record<Change['kind'], number>> = {
  'use-way': 0,
  'other-oven': 0,
  'give-to': 0,
  'do-ahead': 0,
  'widen-temperature': 1,
  'bring-cold': 1,
  'wait-longer': 2,
  'keep-longer': 2,
  'course-later': 3,
  drop: 4,
}

/** One thing that could be changed, by ever more: the first rung that helps is the one to offer. */
export type Ladder = readonly [Change, ...Change[]]

interface Asked {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly clash: Clash
  readonly fight: KitchenFight
  /** On the night: nothing can be done sooner. */
  readonly now?: string
}

/** Every change that might help, what the guests would notice least first. */
export const laddersFor = (asked: Asked): Ladder[] => {
  const happened = gatherFacts(asked.evening).steps
  const free = (id: string) => happened.get(id)?.started === undefined && happened.get(id)?.done === undefined
  const steps = asked.evening.steps.filter(({ id }) => asked.fight.steps.includes(id) && free(id))
  return [
    ...steps.flatMap((step) => otherWays(asked, step)),
    ...steps.flatMap((step) => otherOvens(asked, step)),
    ...steps.flatMap((step) => otherCooks(asked, step)),
    ...steps.flatMap((step) => ahead(asked, step)),
    ...coldWays(asked),
    ...temperatures(asked, steps),
    ...longerWaits(asked),
    ...longerKeeping(asked),
    ...laterCourses(asked),
    ...drops(asked),
  ]
}

const placeOf = (evening: Evening, step: Step): string => {
  const dish = evening.dishes.find(({ id }) => id === step.dish)
  return dish && (step.role === 'make' || step.role === 'carry') ? dish.kitchen : evening.host
}

const kitAt = (evening: Evening, kitchen: string): readonly Kit[] => evening.kitchens.find(({ id }) => id === kitchen)?.kit ?? []

const cueOf = (order: RunningOrder, step: Step) => order.cues.find((cue) => cue.step === step.id)

const otherWays = ({ order }: Asked, step: Step): Ladder[] =>
  step.ways.length < 2
    ? []
    : step.ways.flatMap((_, way): Ladder[] =>
        way === cueOf(order, step)?.way ? [] : [[{ kind: 'use-way', step: step.id, way }]],
      )

/** Only where the recipe names one: else the order has had its choice. */
const otherOvens = ({ evening }: Asked, step: Step): Ladder[] => {
  const named = step.ways.flatMap(({ uses }) => uses.flatMap((use) => (use.kind === 'oven' ? (use.oven ?? []) : [])))
  if (named.length === 0) return []
  return kitAt(evening, placeOf(evening, step)).flatMap((kit): Ladder[] =>
    kit.kind === 'oven' && !named.includes(kit.id) ? [[{ kind: 'other-oven', step: step.id, kit: kit.id }]] : [],
  )
}

/** Only where somebody has claimed it: else the order has had its choice. */
const otherCooks = ({ evening, fight }: Asked, step: Step): Ladder[] => {
  const course = evening.dishes.find(({ id }) => id === step.dish)?.course
  const claim = [step.id, step.dish, course].flatMap((id) => evening.claims.find(({ target }) => target === id) ?? [])[0]
  if (!claim || !fight.attended.includes(step.id)) return []
  const place = placeOf(evening, step)
  return evening.cooks
    .filter(({ id, presence }) => id !== claim.cook && presence.some(({ kitchen }) => kitchen === place))
    .sort((a, b) => byText(a.id, b.id))
    .map((cook): Ladder => [{ kind: 'give-to', step: step.id, cook: cook.id }])
}

const HOUR_MS = 3_600_000

/** An hour sooner, two, from when the kitchen opens that day, or the day before. */
const ahead = ({ evening, fight, now }: Asked, step: Step): Ladder[] => {
  if (!step.earliest || !fight.early.includes(step.id)) return []
  const place = placeOf(evening, step)
  const from = epochMsOf(evening, step.earliest)
  const day = step.earliest.day
  const opens = (on: number): number[] => {
    const times = evening.cooks.flatMap(({ presence }) =>
      presence.flatMap((stay) => (stay.kitchen === place && stay.from.day === on ? [epochMsOf(evening, stay.from)] : [])),
    )
    return times.length > 0 ? [Math.min(...times)] : []
  }
  const soonest = now === undefined ? Number.NEGATIVE_INFINITY : msOfInstant(now)
  const rungs = [from - HOUR_MS, from - 2 * HOUR_MS, ...opens(day), ...(day > -7 ? opens(day - 1) : [])]
    .filter((at) => at < from && at >= soonest)
    .sort((a, b) => b - a)
    .map((at) => wallTimeOfMs(evening, at))
    .filter((at): at is At => at.day >= -7)
    .map((earliest): Change => ({ kind: 'do-ahead', step: step.id, earliest }))
  return ladder(rungs)
}

const ladder = (rungs: readonly Change[]): Ladder[] => {
  const [first, ...rest] = rungs
  return first ? [[first, ...rest]] : []
}

/** Of a dish that is carried hot, when it is what suffers, or what is in the way. */
const coldWays = ({ evening, clash, fight }: Asked): Ladder[] => {
  const steps = evening.steps.filter(({ id }) => fight.steps.includes(id))
  const dishes = new Set([clash.dish, ...fight.kept, ...steps.map(({ dish }) => dish)])
  const happened = gatherFacts(evening).steps
  const begun = (dish: string) =>
    evening.steps.some((step) => step.dish === dish && step.role !== 'make' && happened.has(step.id))
  return [...dishes].flatMap((dish): Ladder[] => {
    const way = dish === null || begun(dish) ? null : coldWayOf(evening, dish)
    return way ? [[{ kind: 'bring-cold', ...way }]] : []
  })
}

const DEGREES = 5

/** Towards what else wants the oven, in steps of 5 °C; hotter before colder. What must reach a core temperature is never colder. */
const temperatures = (asked: Asked, steps: readonly Step[]): Ladder[] => {
  const { evening, order, fight } = asked
  const holders = fight.kit.filter(({ of }) => of === 'oven').map(({ by }) => by)
  const windows = holders.flatMap((by) => {
    const step = 'step' in by ? evening.steps.find(({ id }) => id === by.step) : undefined
    const uses = step ? (step.ways[cueOf(order, step)?.way ?? 0]?.uses ?? []) : []
    const kept = 'dish' in by ? (evening.dishes.find(({ id }) => id === by.dish)?.keeps.uses ?? []) : []
    return [...uses, ...kept].flatMap((use) => (use.kind === 'oven' ? [use] : []))
  })
  const both = steps
    .filter(({ id }) => holders.some((by) => 'step' in by && by.step === id))
    .flatMap((step) => {
      const way = cueOf(order, step)?.way ?? 0
      const use = step.ways[way]?.uses.find((each) => each.kind === 'oven')
      if (use?.kind !== 'oven') return []
      const { lowC, highC } = use
      const greatest = Math.max(
        ...kitAt(evening, placeOf(evening, step)).map((kit) =>
          kit.kind === 'oven' && (use.oven ?? kit.id) === kit.id ? kit.maxC : Number.NEGATIVE_INFINITY,
        ),
      )
      const top = Math.min(greatest, Math.max(highC, ...windows.map((other) => other.lowC)))
      const bottom = Math.min(lowC, greatest, ...windows.map((other) => other.highC))
      const widen = (low: number, high: number): Change => ({
        kind: 'widen-temperature',
        step: step.id,
        way,
        lowC: low,
        highC: high,
      })
      const hotter = rungsTo(highC, top).map((high) => widen(lowC, high))
      const colder = step.until?.coreC === undefined ? rungsTo(lowC, bottom).map((low) => widen(low, highC)) : []
      return [
        { by: top - highC, colder: 0, rungs: hotter },
        { by: lowC - bottom, colder: 1, rungs: colder },
      ]
    })
  return both.sort((a, b) => a.by - b.by || a.colder - b.colder).flatMap(({ rungs }) => ladder(rungs))
}

/** Multiples of 5 °C from here to there, and there itself. */
const rungsTo = (from: number, to: number): number[] => {
  const way = Math.sign(to - from)
  const count = Math.ceil(Math.abs(to - from) / DEGREES)
  return Array.from({ length: count }, (_, k) => (k + 1 === count ? to : from + way * DEGREES * (k + 1)))
}

/** How much longer something may have to wait: what this clash lacks, what its fight lacks, what the evening lacks, and more. */
const amounts = ({ order, clash, fight }: Asked): string[] => {
  const own = secondsOf(clash.by)
  const sum = (clashes: readonly Clash[]) => clashes.reduce((all, { by }) => all + secondsOf(by), 0)
  const whole = sum(order.clashes.filter((one) => takesPart(one, fight)))
  const all = sum(order.clashes.filter(({ kind }) => kind !== 'safety' && kind !== 'no-cook' && kind !== 'no-kit'))
  const minutes = [own, whole, 1.5 * whole, 2 * whole, all, 2 * all].map((seconds) => Math.ceil(seconds / 60) * 60)
  return [...new Set(minutes)]
    .filter((seconds) => seconds >= own && seconds > 0)
    .sort((a, b) => a - b)
    .map(durationOf)
}

/** Of lags that fight the clash's own comes first, then others that are broken. */
const longerWaits = (asked: Asked): Ladder[] => {
  const { order, clash, fight } = asked
  const breaks = (one: Clash, lag: KitchenFight['lags'][number]) =>
    one.kind === 'lag' && one.steps[0] === lag.after && one.steps[1] === lag.step
  const rank = (lag: KitchenFight['lags'][number]) =>
    breaks(clash, lag) ? 0 : order.clashes.some((one) => breaks(one, lag)) ? 1 : 2
  return [...fight.lags]
    .sort((a, b) => rank(a) - rank(b))
    .flatMap((lag) => ladder(amounts(asked).map((by): Change => ({ kind: 'wait-longer', ...lag, by }))))
}

const longerKeeping = (asked: Asked): Ladder[] =>
  ownFirst(asked.fight.kept, asked.clash.dish).flatMap((dish) =>
    ladder(amounts(asked).map((by): Change => ({ kind: 'keep-longer', dish, by }))),
  )

const ownFirst = (ids: readonly string[], own: string | null): string[] =>
  [...ids].sort((a, b) => Number(b === own) - Number(a === own))

/** Of courses that the fight is about. Once the guests have said when they sit down, or do, the first is where it is. */
const laterCourses = (asked: Asked): Ladder[] => {
  const { courses, sitDown } = gatherFacts(asked.evening)
  const fixed = (course: string) =>
    courses.get(course)?.toTable !== undefined || (sitDown !== undefined && course === asked.order.courses[0]?.course)
  return ownFirst(asked.fight.courses, asked.clash.course)
    .filter((course) => !fixed(course))
    .flatMap((course) => ladder(amounts(asked).map((by): Change => ({ kind: 'course-later', course, by }))))
}

/** A course that would be empty is no way out of anything but an empty list: it comes last. */
const drops = ({ evening, clash, fight }: Asked): Ladder[] => {
  const of = (step: string) => evening.steps.find(({ id }) => id === step)?.dish ?? null
  const dishes = [...new Set([clash.dish, ...fight.steps.map(of), ...fight.kept])]
  return evening.dishes
    .filter(({ id, state }) => state === 'on' && dishes.includes(id))
    .map((dish) => ({ dish, alone: isAlone(evening, dish.id) ? 1 : 0 }))
    .sort((a, b) => a.alone - b.alone || byText(a.dish.id, b.dish.id))
    .map(({ dish }): Ladder => [{ kind: 'drop', dish: dish.id }])
}

/** Whether its course would be empty without it. */
export const isAlone = (evening: Evening, id: string): boolean => {
  const dish = evening.dishes.find((one) => one.id === id)
  return !evening.dishes.some(
    (one) => one.id !== id && one.course === dish?.course && (one.state === 'on' || one.id === dish.standIn),
  )
}
