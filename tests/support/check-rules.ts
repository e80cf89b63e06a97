import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'

/** Everything is in ms since 1970; plans are on a grid of 30 s. */
const GRID = 30_000
const MINUTE = 60_000
const up = (duration: string): number => Math.ceil((secondsOf(duration) * 1000) / GRID) * GRID
const down = (duration: string): number => Math.floor((secondsOf(duration) * 1000) / GRID) * GRID
const ms = (instant: string): number => Date.parse(instant)

/** A cue with what it is of. `free`: it is planned, and not something that happened. */
export interface Act {
  readonly cue: Cue
  readonly step: Step
  readonly way: Way
  readonly dish: Dish | null
  readonly free: boolean
  readonly name: string
  readonly from: number
  readonly to: number
  /** Its kit is held until then. */
  readonly holdTo: number
  readonly touches: readonly Touched[]
}

export interface Touched {
  readonly touch: number
  readonly cook: string
  readonly from: number
  readonly to: number
}

export interface Seen {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly acts: readonly Act[]
  /** By course. */
  readonly moments: ReadonlyMap<string, number>
  readonly served: ReadonlySet<string>
}

/** The order laid against its evening, from the printed times alone. */
export const see = (evening: Evening, order: RunningOrder): Seen => ({
  evening,
  order,
  acts: order.cues.flatMap((cue) => actOf(evening, cue)),
  moments: new Map(order.courses.map(({ course, toTable }) => [course, ms(toTable)])),
  served: new Set(evening.night.flatMap((fact) => ('course' in fact && (fact.toTable || fact.platesOff) ? [fact.course] : []))),
})

const actOf = (evening: Evening, cue: Cue): Act[] => {
  const step = evening.steps.find(({ id }) => id === cue.step)
  const way = step?.ways[cue.way]
  if (!step || !way) return []
  const [from, to] = [ms(cue.start), ms(cue.end)]
  const touches = touchesOf(way, cue, to - from)
  const outs = touches.flatMap((one) => (way.touches[one.touch]?.when === 'out' ? [one.to] : []))
  const dish = evening.dishes.find(({ id }) => id === step.dish) ?? null
  const free = cue.state === 'planned' || cue.state === 'frozen'
  return [{ cue, step, way, dish, free, name: `${cue.step}#${cue.batch}`, from, to, holdTo: Math.max(to, ...outs), touches }]
}

const touchesOf = (way: Way, cue: Cue, length: number): Touched[] => {
  const numbers = way.touches.flatMap((touch, number) => {
    if (typeof touch.when === 'string') return cue.state === 'running' && touch.when === 'in' ? [] : [number]
    const every = down(touch.when.every)
    return Array.from({ length: Math.max(0, Math.ceil(length / every) - 1) }, () => number)
  })
  // Of what runs only the last ones are still to come.
  const listed = cue.touches.length < numbers.length ? numbers.slice(numbers.length - cue.touches.length) : numbers
  return cue.touches.map(({ at, cook }, i) => {
    const touch = listed[i] ?? -1
    return { touch, cook, from: ms(at), to: ms(at) + up(way.touches[touch]?.takes ?? 'PT0S') }
  })
}

/** Every hard rule of evening.md that the order breaks, in words. */
export const brokenRules = (evening: Evening, order: RunningOrder, now?: string): string[] => {
  const seen = see(evening, order)
  return [
    ...seen.acts.filter(({ free }) => free).flatMap((act) => ownTroubles(seen, act, now)),
    ...cookTroubles(seen),
    ...batchTroubles(seen),
    ...mealTroubles(seen, now),
  ]
}

/** What was asked for before it was begun: a step under way needs longer itself, not what is still to come of it. */
const extraOf = (evening: Evening, step: string): number =>
  evening.night.some((fact) => 'step' in fact && fact.step === step && (fact.started || fact.done)) ? 0 : asked(evening, step)

const asked = (evening: Evening, step: string): number =>
  evening.night.reduce(
    (sum, fact) => ('step' in fact && fact.step === step && fact.extra ? sum + secondsOf(fact.extra) * 1000 : sum),
    0,
  )

const paceOf = (evening: Evening, cooks: readonly string[]): number =>
  Math.max(...cooks.map((id) => evening.cooks.find((cook) => cook.id === id)?.pace ?? 1))

/** Where and when it is, how long it takes, who does it. */
const ownTroubles = ({ evening }: Seen, act: Act, now: string | undefined): string[] => {
  const { step, way, dish, name, from, to, cue } = act
  const said: string[] = []
  const no = (holds: boolean, what: string) => {
    if (!holds) said.push(`${name} ${what}`)
  }
  no(from % GRID === 0 && to % GRID === 0, 'is not on the grid')
  if (step.earliest) no(from >= epochMsOf(evening, step.earliest), 'starts too early')
  if (step.latest) no(to <= epochMsOf(evening, step.latest), 'ends too late')
  if (now !== undefined) no(from >= ms(now), 'starts before now')
  const extra = Math.ceil(extraOf(evening, step.id) / GRID) * GRID
  const home = dish && (step.role === 'make' || step.role === 'carry') ? dish.kitchen : evening.host
  // Who is on the road is not waited for: the way is planned as on a bad day.
  const isRoad = step.role === 'carry' && home !== evening.host
  const likely = up(isRoad ? way.takes.most : way.takes.likely) + extra
  const length = way.care === 'hands-on' ? Math.ceil((likely / GRID) * paceOf(evening, cue.cooks) - 1e-9) * GRID : likely
  const most = way.care === 'leave' && way.upTo ? Math.max(down(way.upTo), up(way.takes.most) + extra) : length
  no(to - from >= length && to - from <= most, `lasts ${(to - from) / MINUTE} min, not ${length / MINUTE} to ${most / MINUTE}`)
  no(cue.kitchen === home, `is in ${cue.kitchen}, not in ${home}`)
  const asked = { 'hands-on': way.cooks, eye: 1, leave: 0 }[way.care]
  no(cue.cooks.length === asked && new Set(cue.cooks).size === asked, `has ${cue.cooks.length} cooks, not ${asked}`)
  const claimed = claimedBy(evening, act).slice(0, asked)
  no(
    claimed.every((cook) => cue.cooks.includes(cook)),
    `is claimed by ${claimed}, and done by ${cue.cooks}`,
  )
  for (const cook of cue.cooks) no(isThere(evening, act, cook, from, to), `: ${cook} is not there`)
  for (const touch of act.touches)
    no(isPresent(evening, home, touch.cook, touch.from, touch.to), `: ${touch.cook} is not there for a touch`)
  const windows = touchWindows(way, from, to)
  no(windows.length === act.touches.length, `has ${act.touches.length} touches, not ${windows.length}`)
  for (const [i, [low, high]] of windows.entries()) {
    const at = act.touches[i]?.from ?? low
    no(at >= low && at <= high, `is touched at ${(at - from) / MINUTE} min`)
  }
  return said
}

const touchWindows = (way: Way, from: number, to: number): [number, number][] =>
  way.touches.flatMap(({ when, takes, lateBy }): [number, number][] => {
    if (when === 'in') return [[from, from]]
    if (when === 'out') return [[to - up(takes), to - up(takes) + down(lateBy)]]
    const every = down(when.every)
    const times = Array.from({ length: Math.max(0, Math.ceil((to - from) / every) - 1) }, (_, k) => from + (k + 1) * every)
    return times.map((at) => [at, at + down(lateBy)])
  })

const claimedBy = (evening: Evening, { step, dish }: Act): string[] => {
  for (const target of [step.id, dish?.id, dish?.course]) {
    const claim = evening.claims.find((one) => one.target === target)
    if (claim) return [claim.cook, ...(claim.also ?? [])]
  }
  return []
}

interface Stay {
  readonly kitchen: string
  readonly from: number
  readonly to: number
}

/** The hours of a cook; stays in one kitchen that touch are one. */
const staysOf = (evening: Evening, cook: string): Stay[] => {
  const stays = (evening.cooks.find(({ id }) => id === cook)?.presence ?? [])
    .map((stay) => ({ kitchen: stay.kitchen, from: epochMsOf(evening, stay.from), to: epochMsOf(evening, stay.to) }))
    .sort((a, b) => a.from - b.from)
  const apart: Stay[] = []
  for (const stay of stays) {
    const last = apart.at(-1)
    if (last?.kitchen === stay.kitchen && last.to >= stay.from)
      apart[apart.length - 1] = { ...last, to: Math.max(last.to, stay.to) }
    else apart.push(stay)
  }
  return apart
}

/** Inside a stay there, and not before the way from the stay before can be over. */
const isPresent = (evening: Evening, kitchen: string, cook: string, from: number, to: number): boolean =>
  staysOf(evening, cook).some((stay, i, all) => {
    if (stay.kitchen !== kitchen || stay.from > from || stay.to < to) return false
    const before = all[i - 1]
    return !before || from >= before.to + badWay(evening, cook, before.kitchen, kitchen)
  })

/** The way between the host's and another kitchen on a bad day: the kitchen's own, or that of what this cook may carry. */
const badWay = (evening: Evening, cook: string, a: string, b: string): number => {
  const far = a === evening.host ? b : b === evening.host ? a : null
  const kitchen = evening.kitchens.find(({ id }) => id === far)
  if (!kitchen) return 0
  const carried = evening.steps.flatMap((step) => {
    const dish = evening.dishes.find(({ id }) => id === step.dish)
    if (step.role !== 'carry' || dish?.kitchen !== far || dish.state !== 'on') return []
    const claim = [step.id, dish.id, dish.course].flatMap((id) => evening.claims.find(({ target }) => target === id) ?? [])[0]
    if (claim && ![claim.cook, ...(claim.also ?? [])].includes(cook)) return []
    return step.ways.map(({ takes }) => Math.ceil((up(takes.most) / GRID) * paceOf(evening, [cook]) - 1e-9) * GRID)
  })
  return Math.max(up(kitchen.toTable), up(kitchen.toTableMost ?? kitchen.toTable), ...carried)
}

/** Who carries is on the road: after a stay in the dish's kitchen and before the next one, which is in the host's. */
const isThere = (evening: Evening, { step, cue }: Act, cook: string, from: number, to: number): boolean => {
  if (step.role !== 'carry' || cue.kitchen === evening.host) return isPresent(evening, cue.kitchen, cook, from, to)
  const stays = staysOf(evening, cook)
  const isBefore = (end: number, stay: Stay, next: Stay) =>
    end <= Math.max(next.from, stay.to + badWay(evening, cook, stay.kitchen, next.kitchen))
  return stays.some((stay, i) => {
    const next = stays[i + 1]
    return stay.kitchen === cue.kitchen && next?.kitchen === evening.host && stay.to <= from && isBefore(to, stay, next)
  })
}

/** A cook does one thing at a time, but for what an eye on the pan allows and what is carried on one way. */
const cookTroubles = ({ evening, acts }: Seen): string[] => {
  const works = acts.flatMap((act) => [
    ...act.cue.cooks.map((cook) => ({
      act,
      cook,
      from: act.from,
      to: act.to,
      eye: act.way.care === 'eye',
      touch: false,
      free: act.free,
    })),
    ...act.touches.map(({ cook, from, to }) => ({ act, cook, from, to, eye: false, touch: true, free: true })),
  ])
  const carries = ({ act, touch }: (typeof works)[number]) =>
    act.step.role === 'carry' && act.cue.kitchen !== evening.host && !touch
  const goesBetween = (a: (typeof works)[number], b: (typeof works)[number]) =>
    staysOf(evening, a.cook).some(({ from, to }) => from >= Math.min(a.to, b.to) && to <= Math.max(a.from, b.from))
  return works.flatMap((a, i) =>
    works.slice(i + 1).flatMap((b) => {
      if (a.cook === b.cook && carries(a) && carries(b) && a.free && b.free && a.from !== b.from && !goesBetween(a, b))
        return [`${a.cook} leaves twice, with ${a.act.name} and ${b.act.name}`]
      if (a.cook !== b.cook || a.from >= b.to || b.from >= a.to || !(a.free || b.free)) return []
      if (carries(a) && carries(b)) return []
      const together = a.act.cue.kitchen === b.act.cue.kitchen && a.act.step.where === b.act.step.where
      const short = [a, b].every((one) => one.eye || one.to - one.from <= 10 * MINUTE)
      return (a.eye || b.eye) && together && short ? [] : [`${a.cook} does ${a.act.name} and ${b.act.name} at once`]
    }),
  )
}

const batchTroubles = ({ acts }: Seen): string[] =>
  acts.flatMap((act) => {
    const { batch } = act.step
    if (!batch || !act.free) return []
    const own = acts.filter(({ step }) => step === act.step)
    const at = own.filter(({ from, to }) => from <= act.from && to > act.from)
    const before = own.find(({ cue }) => cue.batch === act.cue.batch - 1)
    return [
      ...(at.length > batch.together ? [`${act.name} is one of ${at.length} at once`] : []),
      ...(before && before.from > act.from ? [`${act.name} starts before ${before.name}`] : []),
    ]
  })

/** When a dish is ready and when it reaches the table; null without a cue. */
export const arrivalOf = ({ acts, moments }: Seen, dish: Dish): { ready: number; arrival: number } | null => {
  const ends = acts.filter((act) => act.dish?.id === dish.id).map(({ to }) => to)
  const moment = moments.get(dish.course)
  if (ends.length === 0 || moment === undefined) return null
  const ready = Math.max(...ends)
  return { ready, arrival: Math.max(ready, moment - down(dish.toTable.early)) }
}

const mealTroubles = (seen: Seen, now: string | undefined): string[] => {
  const { evening, order, served, moments } = seen
  const told = evening.night.flatMap((fact) => ('sitDown' in fact ? [Math.ceil(ms(fact.sitDown) / GRID) * GRID] : [])).at(-1)
  const sitDown = told ?? epochMsOf(evening, evening.sitDown)
  let off = Number.NEGATIVE_INFINITY
  const meals = order.courses.flatMap((one) => {
    const course = evening.courses.find(({ id }) => id === one.course)
    if (!course) return [`there is no course ${one.course}`]
    const at = ms(one.toTable)
    const before = off
    if (!course.children) off = ms(one.platesOff)
    if (served.has(one.course)) return []
    const from = course.notBefore ? epochMsOf(evening, course.notBefore) : at
    const first =
      !course.welcome &&
      order.courses.find((each) => evening.courses.some(({ id, welcome }) => id === each.course && !welcome)) === one
    return [
      ...(at < from && !course.welcome ? [`${course.id} comes before it may`] : []),
      ...(now !== undefined && at < ms(now) ? [`${course.id} comes before now`] : []),
      ...(first && at < sitDown ? [`${course.id} comes before the guests sit`] : []),
      ...(!course.welcome && at < before + up(course.pouring) ? [`${course.id} comes before the table is ready for it`] : []),
      ...(course.welcome && at < Math.min(sitDown, epochMsOf(evening, course.children?.at ?? evening.guestsFrom))
        ? [`${course.id} comes before the guests`]
        : []),
    ]
  })
  const dishes = evening.dishes.flatMap((dish) => {
    const reached = arrivalOf(seen, dish)
    const moment = moments.get(dish.course)
    if (!reached || moment === undefined || served.has(dish.course)) return []
    return reached.ready > moment + down(dish.toTable.late) ? [`${dish.id} is late for its course`] : []
  })
  return [...meals, ...dishes]
}

export { down, GRID, MINUTE, ms, up }
