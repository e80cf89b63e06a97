import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import type { Claim } from '#lib/domain/people.ts'
import { type Dice, dice } from './dice.ts'
import { at, claim, follows, min, notAfter, step, tool, worktop } from './evening-builders.ts'
import { randomEvening, type Size } from './random-evening.ts'

/** How big the kitchens of the bench are. Steps are reached or passed by a few. */
export const BENCH_SIZES = {
  small: { steps: 30, courses: 3, cooks: 3 },
  middle: { steps: 60, courses: 4, cooks: 5 },
  large: { steps: 120, courses: 6, cooks: 8 },
} as const satisfies Record<string, Size>
export type BenchSize = keyof typeof BENCH_SIZES

/** How many of the steps the dishes begin with; the rest is done ahead. */
const OF_DISHES: Readonly<Record<BenchSize, number>> = { small: 26, middle: 45, large: 70 }
/** How many of the dishes that can be begun ahead are. */
const AHEAD: Readonly<Record<BenchSize, number>> = { small: 0.7, middle: 0.85, large: 1 }
/** How many of the dishes are claimed. */
const CLAIMED = 0.75

/**
 * A random evening whose cost a solver can prove. The cooks eat with the guests, have the same pace and are friends of the
 * hosts, who do not cook; most dishes are claimed, those of a course by different cooks; every course is wanted eight
 * minutes after the plates of the one before; nothing needs only an eye: what is short is stirred all the time, what is long
 * is left alone. What a dish lets be done ahead is to be done by an hour of its own, on the day or the day before, and
 * sauces, stocks and garnishes are made ahead: the bigger the evening, the more of it, the more cooks and the more
 * courses. The rest is as it was: ovens and rings wanted at once, vessels, two cooks plating, a friend who brings a dish.
 */
export const benchEvening = (seed: number, size: BenchSize): Evening => {
  const evening = randomEvening(seed, { ...BENCH_SIZES[size], steps: OF_DISHES[size] })
  const d = dice(seed + 1_000_000)
  const athome = evening.dishes.filter(({ kitchen }) => kitchen === evening.host).map(({ id }) => id)
  const simpler = evening.steps.map((each) => ({ ...each, ways: each.ways.map(each.role === 'carry' ? sure : simple) }))
  const steps = athome.reduce((all, id) => (d.chance(AHEAD[size]) ? doneAhead(d, all, id) : all), simpler)
  return {
    ...evening,
    cooks: evening.cooks.map((cook) => ({ ...cook, host: false, eats: true, pace: 1 })),
    courses: evening.courses.map((course) => ({ ...course, wait: { ...course.wait, ideal: [min(8), min(8)] } })),
    claims: claimsOf(d, evening),
    steps: withMore(d, steps, athome, BENCH_SIZES[size].steps),
  }
}

/** The way that is planned, which is the longest, is the likely one: what is proved holds for it. */
const sure = (way: Way): Way => {
  const { least, likely } = way.takes
  return { ...simple(way), takes: { least, likely, most: likely } }
}

/** One in four is the day before. */
const hourOf = (d: Dice): string => `${d.chance(0.25) ? `-1 ${d.int(13, 20)}` : d.int(11, 16)}:${d.pick(['00', '30'])}`

/** Something for a dish is made ahead, until there are steps enough. What it is for has no hour of its own. */
const withMore = (d: Dice, steps: readonly Step[], dishes: readonly string[], count: number): Step[] => {
  if (steps.length >= count) return [...steps]
  const dish = d.pick(dishes)
  const open = steps.filter((each) => each.dish === dish && each.latest === undefined)
  if (open.length === 0) return withMore(d, steps, dishes, count)
  const use = d.pick(open)
  const likely = d.int(8, 25)
  const made = step(
    `${dish}-more-${steps.length}`,
    [Math.ceil(likely * 0.8), likely, Math.ceil(likely * 1.3)],
    d.chance(0.3) ? tool(d.pick(['sink', 'blender'])) : worktop(d.int(1, 3)),
    notAfter(hourOf(d)),
  )
  const before = { ...made, dish, order: `${use.order}0` }
  return withMore(
    d,
    steps.flatMap((each) => (each === use ? [before, follows(before.id)(each)] : [each])),
    dishes,
    count,
  )
}

/** Dishes of another kitchen stay with whoever brings them; those at home go round among the others. */
const claimsOf = (d: Dice, { dishes, claims, cooks, host }: Evening): Claim[] => {
  const athome = cooks.filter(({ presence }) => presence.every(({ kitchen }) => kitchen === host))
  return dishes.flatMap(({ id, kitchen }, index) => {
    if (kitchen !== host) return claims.filter(({ target }) => target === id)
    const by = athome[index % athome.length]
    return by && d.chance(CLAIMED) ? [claim(id, by.id)] : []
  })
}

const LONG_S = 15 * 60

const simple = (way: Way): Way => {
  if (way.care === 'hands-on') return way
  if (way.care === 'eye' && secondsOf(way.takes.likely) < LONG_S) return { ...way, care: 'hands-on' }
  return { ...way, care: 'leave', touches: way.touches.filter(({ when }) => typeof when === 'string') }
}

/** A step may be followed so much later for what comes before to be done ahead. */
const PATIENT_S = 4 * 3600

/** The steps of a dish after which it can wait for hours, with all before them, done by an hour of that dish. */
const doneAhead = (d: Dice, steps: readonly Step[], dish: string): Step[] => {
  const by = at(hourOf(d))
  const own = steps.filter((step) => step.dish === dish)
  const isPatient = ({ most }: Step['after'][number]) => most === undefined || secondsOf(most) >= PATIENT_S
  const before = (step: Step): Step[] => [
    step,
    ...own.filter(({ id }) => step.after.some((after) => after.step === id)).flatMap(before),
  ]
  const last = own.flatMap(({ after }) => after.filter(isPatient).map(({ step }) => step))
  const ahead = new Set(
    own
      .filter(({ id }) => last.includes(id))
      .flatMap(before)
      .map(({ id }) => id),
  )
  return steps.map((step) => {
    if (ahead.has(step.id)) {
      const { earliest: _, ...rest } = step
      return { ...rest, latest: step.latest ?? by }
    }
    return { ...step, after: step.after.map((after) => (ahead.has(after.step) ? { ...after, most: min(2880) } : after)) }
  })
}
