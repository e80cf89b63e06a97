import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'

const ms = (instant: string): number => Date.parse(instant)
const SECOND = 1000
type Range = readonly [from: number, to: number]

const merge = (ranges: readonly Range[]): Range[] => {
  const merged: [number, number][] = []
  for (const [from, to] of [...ranges].filter(([a, b]) => a < b).sort((a, b) => a[0] - b[0])) {
    const last = merged.at(-1)
    if (last && from <= last[1]) last[1] = Math.max(last[1], to)
    else merged.push([from, to])
  }
  return merged
}
const cutTo = ([low, high]: Range, ranges: readonly Range[]): Range[] =>
  ranges.map(([from, to]): Range => [Math.max(low, from), Math.min(high, to)]).filter(([from, to]) => from < to)
const total = (ranges: readonly Range[]): number => ranges.reduce((sum, [from, to]) => sum + to - from, 0)

/**
 * Everything in a running order that contradicts its evening or itself, in words; nothing when all is well. Written from
 * evening.md's wording and from the order's own clock times, without the code that made it.
 */
export const troubles = (evening: Evening, order: RunningOrder): string[] => {
  const parsed = RunningOrder.safeParse(JSON.parse(JSON.stringify(order)))
  if (!parsed.success) return [`does not parse: ${parsed.error.message}`]
  return [
    ...cueTroubles(evening, order),
    ...stepTroubles(evening, order),
    // What happened need not keep any rule, so the night's meals and ovens are not asked to.
    ...(evening.night.length > 0 ? [] : [...courseTroubles(evening, order), ...ovenTroubles(evening, order)]),
    ...cookTroubles(evening, order),
    ...costTroubles(order),
    ...lagTroubles(evening, order),
  ]
}

const wayOf = (evening: Evening, cue: Cue) => evening.steps.find(({ id }) => id === cue.step)?.ways[cue.way]
const kitOf = (evening: Evening, id: string) => evening.kitchens.flatMap((kitchen) => kitchen.kit).find((kit) => kit.id === id)

/** [at, at + takes) of each touch that the cue lists, in its way's order. */
const touchesOf = (evening: Evening, cue: Cue): { cook: string; range: Range; when: 'in' | 'out' | 'every' }[] => {
  const left = [...cue.touches]
  const length = (ms(cue.end) - ms(cue.start)) / SECOND
  return (wayOf(evening, cue)?.touches ?? []).flatMap((touch) => {
    const every = typeof touch.when === 'object' ? secondsOf(touch.when.every) : 0
    const count = every > 0 ? Math.max(0, Math.ceil(length / every) - 1) : 1
    return left.splice(0, count).map(({ at, cook }) => ({
      cook,
      range: [ms(at), ms(at) + Math.ceil(secondsOf(touch.takes) / 30) * 30 * SECOND] as const,
      when: typeof touch.when === 'object' ? ('every' as const) : touch.when,
    }))
  })
}

const holdEnd = (evening: Evening, cue: Cue): number =>
  Math.max(
    ms(cue.end),
    ...touchesOf(evening, cue)
      .filter(({ when }) => when === 'out')
      .map(({ range }) => range[1]),
  )

const cueTroubles = (evening: Evening, order: RunningOrder): string[] =>
  order.cues.flatMap((cue, index) => {
    const way = wayOf(evening, cue)
    const name = `${cue.step}#${cue.batch}`
    if (!way) return [`${name} has no way ${cue.way}`]
    const before = order.cues[index - 1]
    const attending = { 'hands-on': way.cooks, eye: 1, leave: 0 }[way.care]
    return [
      ...(before && ms(before.start) > ms(cue.start) ? [`${name} is out of order`] : []),
      ...(ms(cue.end) < ms(cue.start) ? [`${name} ends before it starts`] : []),
      ...(cue.state === 'planned' && cue.cooks.length !== attending ? [`${name} has ${cue.cooks.length} cooks`] : []),
      ...(new Set(cue.cooks).size !== cue.cooks.length ? [`${name} has a cook twice`] : []),
      ...(cue.state === 'planned' && cue.kit.length !== way.uses.length ? [`${name} lists ${cue.kit.length} kit`] : []),
      ...cue.kit.flatMap(({ id, unit }, at) => {
        const kit = kitOf(evening, id)
        const use = way.uses[at]
        if (!kit || kit.kind !== use?.kind) return [`${name} holds ${id} for ${use?.kind}`]
        const most = kit.kind === 'ring' ? kit.count : 1
        return unit < most ? [] : [`${name} holds unit ${unit} of ${id}`]
      }),
      ...(cue.because.length === 0 ? [`${name} does not say why`] : []),
    ]
  })

const leftOut = (order: RunningOrder): ReadonlySet<string> =>
  new Set(
    order.clashes
      .filter(({ kind }) => kind === 'safety' || kind === 'no-cook' || kind === 'no-kit')
      .flatMap(({ steps }) => steps)
      // What is under way, and should not be, is not left out.
      .filter((step) => !order.cues.some((cue) => cue.step === step && (cue.state === 'running' || cue.state === 'done'))),
  )

/** Those who are fed from this step: of the covers, or of the dish, without those whose variant has left the dish before it. */
const portionsOf = ({ covers, courses, dishes, steps }: Evening, step: Evening['steps'][number]): number => {
  const dish = dishes.find(({ id }) => id === step.dish)
  const own =
    dish?.variant?.portions ?? dish?.portions ?? courses.find(({ id }) => id === dish?.course)?.children?.covers ?? covers
  const forks = dishes.flatMap(({ state, variant }) => (variant && state === 'on' && variant.of === step.dish ? [variant] : []))
  const gone = forks.filter(({ fork }) =>
    steps.some(({ id, dish: of, order }) => id === fork && of === step.dish && order < step.order),
  )
  const rest = own - gone.reduce((sum, { portions }) => sum + portions, 0)
  return rest > 0 ? rest : own
}

/** Every step that is on is a cue, each of its batches once, or named in a clash. */
const stepTroubles = (evening: Evening, order: RunningOrder): string[] => {
  const on = new Set(evening.dishes.filter(({ state }) => state === 'on').map(({ id }) => id))
  const left = leftOut(order)
  return evening.steps.flatMap((step) => {
    const cues = order.cues.filter((cue) => cue.step === step.id)
    const planned = step.dish === null || on.has(step.dish)
    if (!planned) return cues.length > 0 ? [`${step.id} is planned and not on`] : []
    const portions = portionsOf(evening, step)
    const batches = step.batch ? Math.ceil(portions / step.batch.portions) : 1
    const numbers = cues.map(({ batch }) => batch).sort((a, b) => a - b)
    if (left.has(step.id)) return cues.length < batches ? [] : [`${step.id} is left out and planned`]
    return numbers.join() === Array.from({ length: batches }, (_, k) => k).join()
      ? []
      : [`${step.id} has batches ${numbers.join()}`]
  })
}

const courseTroubles = (evening: Evening, order: RunningOrder): string[] => {
  let since = 0
  return order.courses.flatMap((served, index) => {
    const course = evening.courses.find(({ id }) => id === served.course)
    if (!course) return [`no course ${served.course}`]
    const first =
      !course.welcome &&
      order.courses.slice(0, index).every((each) => evening.courses.find(({ id }) => id === each.course)?.welcome)
    if (course.welcome) since = epochMsOf(evening, course.children?.at ?? evening.guestsFrom)
    if (first) since = epochMsOf(evening, evening.sitDown)
    const wait = (ms(served.toTable) - since) / SECOND
    const meal = secondsOf(course.eating.likely) + secondsOf(course.clearing)
    since = ms(served.platesOff)
    return [
      ...(secondsOf(served.wait) === wait ? [] : [`${served.course} waits ${served.wait}, by the clock ${wait} s`]),
      ...((ms(served.platesOff) - ms(served.toTable)) / SECOND === meal ? [] : [`${served.course} is eaten in another time`]),
      ...(wait < secondsOf(course.pouring) && index > 0 && !first && !course.welcome ? [`${served.course} is not poured`] : []),
    ]
  })
}

const ovenTroubles = (evening: Evening, order: RunningOrder): string[] =>
  order.ovens.flatMap(({ kit: id, line, preheats }) => {
    const kit = kitOf(evening, id)
    if (kit?.kind !== 'oven') return [`${id} is no oven`]
    const at = (moment: number): number => {
      const next = line.findIndex((point) => ms(point.at) >= moment)
      const [a, b] = [line[next - 1], line[next]]
      if (!b) return 20
      if (!a || ms(b.at) === moment) return b.c
      return a.c + ((b.c - a.c) * (moment - ms(a.at))) / (ms(b.at) - ms(a.at))
    }
    const slopes = line.slice(1).flatMap((point, index) => {
      const before = line[index]
      if (!before) return []
      const minutes = (ms(point.at) - ms(before.at)) / 60_000
      const change = point.c - before.c
      // Temperatures are printed to a tenth of a degree.
      const isPossible = change <= kit.upPerMin * minutes + 0.11 && -change <= kit.downPerMin * minutes + 0.11
      return minutes > 0 && isPossible ? [] : [`${id} goes ${change}° in ${minutes} min`]
    })
    const windows = [
      ...order.cues.map((cue) => ({
        uses: wayOf(evening, cue)?.uses ?? [],
        kit: cue.kit,
        from: ms(cue.start),
        to: holdEnd(evening, cue),
        name: cue.step,
      })),
      ...order.keeping.map(({ dish, from, to, kit }) => ({
        uses: evening.dishes.find((each) => each.id === dish)?.keeps.uses ?? [],
        kit,
        from: ms(from),
        to: ms(to),
        name: dish,
      })),
    ].flatMap(({ uses, kit: held, from, to, name }) =>
      uses.flatMap((use, index) => {
        if (use.kind !== 'oven' || held[index]?.id !== id) return []
        const moments = [from, to, ...line.map((point) => ms(point.at)).filter((moment) => moment > from && moment < to)]
        return moments.flatMap((moment) => {
          const c = at(moment)
          if (c > Math.max(20, use.highC) + 0.11) return [`${name} stands in ${c}°, at most ${use.highC}°`]
          return use.preheated && c < use.lowC - 0.11 ? [`${name} stands in ${c}°, at least ${use.lowC}°`] : []
        })
      }),
    )
    const cold = line[0] && line[0].c !== 20 ? [`${id} starts at ${line[0].c}°`] : []
    const turned = preheats.flatMap((moment) =>
      at(ms(moment) + 30 * SECOND) > at(ms(moment)) ? [] : [`${id} does not rise at ${moment}`],
    )
    return [...slopes, ...windows, ...cold, ...turned]
  })

/** When a cook is at work, by kind. */
const workOf = (evening: Evening, order: RunningOrder, cook: string) =>
  order.cues.flatMap((cue) => {
    const step = evening.steps.find(({ id }) => id === cue.step)
    const care = wayOf(evening, cue)?.care
    const own = cue.cooks.includes(cook) ? [{ range: [ms(cue.start), ms(cue.end)] as Range, eye: care === 'eye', step }] : []
    const touches = touchesOf(evening, cue).filter((touch) => touch.cook === cook)
    return [...own, ...touches.map(({ range }) => ({ range, eye: false, step }))]
  })

const cookTroubles = (evening: Evening, order: RunningOrder): string[] => {
  const first = order.courses.find(({ course }) => !evening.courses.find(({ id }) => id === course)?.welcome)
  const last = order.courses.at(-1)
  const window: Range = first && last ? [ms(first.toTable), ms(last.toTable)] : [0, 0]
  const up = (cook: string) =>
    merge(
      cutTo(
        window,
        workOf(evening, order, cook)
          .filter(({ step }) => step?.where !== 'table')
          .map(({ range }) => range),
      ),
    )
  const each = order.cooks.flatMap(({ cook, missed, handsOn, sits }) => {
    const eats = evening.cooks.find(({ id }) => id === cook)?.eats ?? false
    const away = up(cook)
    const busy = total(
      merge(
        workOf(evening, order, cook)
          .filter(({ eye }) => !eye)
          .map(({ range }) => range),
      ),
    )
    const gaps = window[0] < window[1] ? merge(sits.map(({ from, to }) => [ms(from), ms(to)])) : []
    const free = window[1] - window[0] - total(away)
    return [
      ...(secondsOf(missed) * SECOND === (eats ? total(away) : 0)
        ? []
        : [`${cook} misses ${missed}, by the clock ${total(away) / 60_000} min`]),
      ...(secondsOf(handsOn) * SECOND === busy ? [] : [`${cook} is hands on ${handsOn}, by the clock ${busy / 60_000} min`]),
      ...(gaps.some(([from, to]) => away.some(([a, b]) => from < b && a < to)) ? [`${cook} sits and works`] : []),
      ...(gaps.some(([from, to]) => to - from < 180 * SECOND) ? [`${cook} sits for less than 3 min`] : []),
      ...(eats && free - total(gaps) >= 180 * SECOND * (away.length + 1) ? [`${cook} sits longer than listed`] : []),
    ]
  })
  const hosts = evening.cooks.filter(({ host }) => host).map(({ id }) => up(id))
  const all = hosts.length > 0 ? merge(hosts.reduce((shared, host) => shared.flatMap((range) => cutTo(range, host)))) : []
  const plating = order.cues.filter((cue) => evening.steps.find(({ id }) => id === cue.step)?.role === 'plate')
  const counted = all.filter(
    ([from, to]) => to - from > 360 * SECOND || !plating.some((cue) => ms(cue.start) < to && from < ms(cue.end)),
  )
  const away = secondsOf(order.allHostsAway) * SECOND === total(counted) ? [] : [`all hosts away ${order.allHostsAway}`]
  return [...each, ...away]
}

const costTroubles = (order: RunningOrder): string[] => {
  const names = order.goals.map(({ goal }) => goal).join()
  const sum = order.goals.reduce((all, { cost }) => all + cost, 0)
  return [
    ...(names === 'safe,on-time,waits,keeping,table,calm,fresh,unchanged' ? [] : [`goals are ${names}`]),
    ...(Math.abs(sum - order.total) < 1e-6 ? [] : [`the goals make ${sum}, not ${order.total}`]),
  ]
}

/** Hard lags hold, and a wish for a lag is broken exactly when a clash says so, by that much. Not asked of a step with a batch left out. */
export const lagTroubles = (evening: Evening, order: RunningOrder): string[] =>
  evening.steps.flatMap((step) =>
    step.after.flatMap((after) => {
      if ([step.id, after.step].some((id) => leftOut(order).has(id))) return []
      const [own, others] = [step.id, after.step].map((id) => order.cues.filter((cue) => cue.step === id))
      const edges = (others ?? []).map((cue) => ms(after.from === 'end' ? cue.end : cue.start))
      const starts = (own ?? []).filter(({ state }) => state === 'planned' || state === 'frozen').map((cue) => ms(cue.start))
      const [firstEdge, lastEdge] = [edges[0], edges.at(-1)]
      const [firstStart, lastStart] = [starts[0], starts.at(-1)]
      if (firstEdge === undefined || lastEdge === undefined || firstStart === undefined || lastStart === undefined) return []
      const name = `${step.id} after ${after.step}`
      const soon = firstStart < lastEdge + secondsOf(after.least) * SECOND ? [`${name} comes too soon`] : []
      if (after.most === undefined) return soon
      const over = (lastStart - firstEdge) / SECOND - secondsOf(after.most)
      const clash = order.clashes.find(({ kind, steps }) => kind === 'lag' && steps[0] === after.step && steps[1] === step.id)
      if (over <= 0) return clash ? [...soon, `${name} is a clash and is kept`] : soon
      if (after.kind === 'safety') return [...soon, `${name} is unsafe`]
      return clash && secondsOf(clash.by) === over
        ? soon
        : [...soon, `${name} is broken by ${over} s, the clash says ${clash?.by}`]
    }),
  )
