import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Use } from '#lib/domain/kitchen.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { type Act, arrivalOf, down, GRID, ms, type Seen, see, up } from './check-rules.ts'

interface Hold {
  readonly name: string
  readonly kit: Kit
  readonly unit: number
  readonly use: Use
  readonly from: number
  readonly to: number
  readonly free: boolean
  readonly vessel: string | null
  readonly act: Act | null
}

const SIZES = ['small', 'medium', 'large']
const kitIn = (evening: Evening, kitchen: string, id: string): Kit | undefined =>
  evening.kitchens.find((one) => one.id === kitchen)?.kit.find((kit) => kit.id === id)

const serves = (kit: Kit, unit: number, use: Use): boolean => {
  if (unit >= (kit.kind === 'ring' ? kit.count : 1)) return false
  if (kit.kind === 'ring') return use.kind === 'ring' && SIZES.indexOf(kit.size) >= SIZES.indexOf(use.size)
  if (kit.kind === 'oven') return use.kind === 'oven' && (use.oven ?? kit.id) === kit.id && use.lowC <= kit.maxC
  if (kit.kind === 'cold') return use.kind === 'cold' && use.keep === kit.keep
  if (kit.kind === 'tool') return use.kind === 'tool' && use.tool.trim().toLowerCase() === kit.tool.trim().toLowerCase()
  return use.kind === 'worktop'
}

/** Every rule of evening.md about kit that the order breaks, in words. */
export const brokenKit = (evening: Evening, order: RunningOrder): string[] => {
  const seen = see(evening, order)
  const said: string[] = []
  const holds = [...actHolds(seen, said), ...keepHolds(seen, said)]
  return [...said, ...ringTroubles(holds), ...roomTroubles(holds), ...heatTroubles(holds), ...doorTroubles(holds)]
}

const holdsOf = (
  evening: Evening,
  kitchen: string,
  uses: readonly Use[],
  held: readonly { id: string; unit: number }[],
  rest: Omit<Hold, 'kit' | 'unit' | 'use'>,
  said: string[],
): Hold[] => {
  if (rest.free && uses.length !== held.length) said.push(`${rest.name} holds ${held.length} kit for ${uses.length} uses`)
  return held.flatMap(({ id, unit }, i) => {
    const [kit, use] = [kitIn(evening, kitchen, id), uses[i]]
    if (kit && use && serves(kit, unit, use)) return [{ ...rest, kit, unit, use }]
    said.push(`${rest.name} holds ${id} ${unit}, which is not what it wants`)
    return []
  })
}

const actHolds = ({ evening, acts }: Seen, said: string[]): Hold[] =>
  acts.flatMap((act) => {
    const { name, from, holdTo: to, free } = act
    const vessel = act.step.vessel === undefined ? null : `${act.step.vessel} ${act.cue.kitchen}`
    return holdsOf(evening, act.cue.kitchen, act.way.uses, act.cue.kit, { name, from, to, free, vessel, act }, said)
  })

/** A dish that waits holds what keeps it, in the host's kitchen, from its last end until it reaches the table. */
const keepHolds = (seen: Seen, said: string[]): Hold[] =>
  seen.evening.dishes.flatMap((dish) => {
    const reached = arrivalOf(seen, dish)
    const listed = seen.order.keeping.find((one) => one.dish === dish.id)
    const own = seen.acts.filter((act) => act.dish?.id === dish.id)
    const free = own.some((act) => act.free) && !seen.served.has(dish.course)
    if (reached && free && reached.ready < reached.arrival) {
      if (!listed) said.push(`${dish.id} waits and is not listed`)
      else if (ms(listed.from) !== reached.ready || ms(listed.to) !== reached.arrival)
        said.push(`${dish.id} waits at another time`)
    }
    if (!listed) return []
    const rest = { name: dish.id, from: ms(listed.from), to: ms(listed.to), free, vessel: null, act: null }
    if (free && (!reached || reached.ready >= reached.arrival)) said.push(`${dish.id} is listed and does not wait`)
    return holdsOf(seen.evening, seen.evening.host, dish.keeps.uses, listed.kit, rest, said)
  })

const overlap = (a: Hold, b: Hold): boolean => a.from < b.to && b.from < a.to
const pairs = (holds: readonly Hold[]): [Hold, Hold][] =>
  holds.flatMap((a, i) =>
    holds.slice(i + 1).flatMap((b): [Hold, Hold][] => (a.kit === b.kit && a.unit === b.unit ? [[a, b]] : [])),
  )

/** One pan on a ring, and one ring for a pan, from its first start to its last end. */
const ringTroubles = (holds: readonly Hold[]): string[] => {
  const rings = holds.filter(({ kit }) => kit.kind === 'ring')
  const vessels = new Map<string, Hold[]>()
  for (const hold of rings)
    if (hold.vessel !== null && firstRing(hold)) vessels.set(hold.vessel, [...(vessels.get(hold.vessel) ?? []), hold])
  const whole = [...vessels.values()].flatMap((own): Hold[] => {
    const [first] = own
    if (!first) return []
    const span = { from: Math.min(...own.map(({ from }) => from)), to: Math.max(...own.map(({ to }) => to)) }
    return [{ ...first, ...span, free: own.some(({ free }) => free) }]
  })
  const inVessel = new Set([...vessels.values()].flat())
  const others = rings.filter((hold) => !inVessel.has(hold))
  const moved = [...vessels.values()].flatMap((own) => {
    const [first] = own
    const apart = own.filter((one) => one.free && (one.kit !== first?.kit || one.unit !== first.unit))
    const twice = own.flatMap((a, i) => own.slice(i + 1).flatMap((b) => (overlap(a, b) && (a.free || b.free) ? [a, b] : [])))
    return [...apart, ...twice].map(({ name }) => `${name} is not on its vessel's ring, or is there twice`)
  })
  const clashing = pairs([...others, ...whole]).flatMap(([a, b]) =>
    overlap(a, b) && (a.free || b.free) && !inBothFacts(a, b, vessels) ? [`${a.name} and ${b.name} are on one ring`] : [],
  )
  return [...moved, ...clashing]
}

const firstRing = ({ act, use }: Hold): boolean => act?.way.uses.find(({ kind }) => kind === 'ring') === use

/** A gap in a vessel's time is not held against facts. */
const inBothFacts = (a: Hold, b: Hold, vessels: ReadonlyMap<string, readonly Hold[]>): boolean => {
  const fact = [a, b].find(({ free }) => !free)
  const other = fact === a ? b : a
  const members = vessels.get(other.vessel ?? '') ?? []
  return fact !== undefined && other.vessel !== null && !members.some((one) => one.free && overlap(one, fact))
}

const amountOf = (use: Use): number =>
  use.kind === 'oven'
    ? use.shelves
    : use.kind === 'cold' || use.kind === 'worktop'
      ? use.places
      : use.kind === 'tool'
        ? use.count
        : 1
const roomOf = (kit: Kit): number =>
  kit.kind === 'oven' ? kit.shelves : kit.kind === 'cold' || kit.kind === 'worktop' ? kit.places : kit.count

const roomTroubles = (holds: readonly Hold[]): string[] =>
  holds.flatMap((hold) => {
    if (hold.kit.kind === 'ring' || hold.from >= hold.to) return []
    const there = holds.filter((one) => one.kit === hold.kit && one.from <= hold.from && one.to > hold.from)
    const sum = there.reduce((all, { use }) => all + amountOf(use), 0)
    return sum > roomOf(hold.kit) && there.some(({ free }) => free) ? [`${hold.kit.id} is too full when ${hold.name} begins`] : []
  })

/** Two dishes are in one oven only where their temperatures meet, and otherwise as far apart as it takes to heat or cool. */
const heatTroubles = (holds: readonly Hold[]): string[] =>
  pairs(holds).flatMap(([a, b]) => {
    const { kit } = a
    if (kit.kind !== 'oven' || a.use.kind !== 'oven' || b.use.kind !== 'oven' || !(a.free || b.free)) return []
    if (a.use.lowC <= b.use.highC && b.use.lowC <= a.use.highC) return []
    const [first, second] = a.from <= b.from ? [a, b] : [b, a]
    if (first.use.kind !== 'oven' || second.use.kind !== 'oven') return []
    const hotter = second.use.lowC > first.use.highC
    const degrees = hotter ? second.use.lowC - first.use.highC : first.use.lowC - second.use.highC
    const gap = Math.ceil((degrees / (hotter ? kit.upPerMin : kit.downPerMin)) * 2 - 1e-9) * GRID
    return second.from < first.to + gap ? [`${first.name} and ${second.name} are too near in ${kit.id}`] : []
  })

const doorTroubles = (holds: readonly Hold[]): string[] =>
  holds.flatMap((hold) => {
    if (hold.use.kind !== 'oven' || hold.use.doorShut === undefined || !hold.act) return []
    const shut = hold.from + up(hold.use.doorShut)
    return holds.flatMap((other) => {
      if (!other.act || other.act === hold.act || other.kit !== hold.kit || !(hold.free || other.free)) return []
      const moments = [other.from, other.to, ...other.act.touches.map(({ from }) => from)]
      return moments.some((at) => at > hold.from && at < shut) ? [`${other.name} opens the door on ${hold.name}`] : []
    })
  })

/** The wishes about dishes and courses: every broken one is a clash by as much, and no kept one is. In words. */
export const wrongClashes = (evening: Evening, order: RunningOrder): string[] => {
  const seen = see(evening, order)
  const wanted = new Map<string, number>()
  const add = (name: string, over: number) => {
    if (over > 0) wanted.set(name, over)
  }
  for (const dish of evening.dishes) {
    const reached = arrivalOf(seen, dish)
    const moment = seen.moments.get(dish.course)
    if (!reached || moment === undefined) continue
    if (seen.served.has(dish.course)) {
      // It was served without this dish, if something of it is still to come.
      const open = seen.acts.some((act) => act.dish?.id === dish.id && act.cue.state !== 'done')
      if (open) add(`wait ${dish.id}`, reached.ready - moment - down(dish.toTable.late))
      continue
    }
    add(`keeps ${dish.id}`, reached.arrival - reached.ready - down(dish.keeps.most))
    const own = seen.acts.filter((act) => act.dish?.id === dish.id)
    const carrying = own
      .filter(({ step, cue }) => step.role === 'carry' && cue.kitchen !== evening.host)
      .sort((a, b) => a.from - b.from || a.to - b.to)[0]
    if (!carrying || !dish.carry) continue
    const next = own.filter(({ step, from }) => step.role !== 'carry' && from >= carrying.to).map(({ from }) => from)
    add(`carry ${dish.id}`, Math.min(reached.arrival, ...next) - carrying.from - down(dish.carry.most))
  }
  let since = 0
  let isFirst = true
  const told = evening.night.flatMap((fact) => ('sitDown' in fact ? [fact.sitDown] : [])).at(-1)
  for (const one of order.courses) {
    const course = evening.courses.find(({ id }) => id === one.course)
    const at = ms(one.toTable)
    const isServed = seen.served.has(one.course)
    if (course && !course.welcome && isFirst && !isServed)
      add(`sit-down ${one.course}`, at - (told === undefined ? sitDownOf(evening) : Math.ceil(ms(told) / GRID) * GRID))
    else if (course && !course.welcome && !isServed) add(`wait ${one.course}`, at - since - down(course.wait.most))
    if (course && !course.welcome) isFirst = false
    since = ms(one.platesOff)
  }
  const found = new Map(
    order.clashes
      .filter(
        ({ kind, course, dish }) =>
          kind === 'keeps' ||
          kind === 'carry' ||
          kind === 'sit-down' ||
          (kind === 'wait' && (dish !== null || !isWelcome(evening, course))),
      )
      .map((clash) => [`${clash.kind} ${clash.dish ?? clash.course}`, clash]),
  )
  // What happened is printed to the second and planned from to the tick.
  const near = evening.night.length > 0 ? 2 * GRID : 0
  return [
    ...[...wanted].flatMap(([name, over]) => {
      const clash = found.get(name)
      if (!clash) return over > near ? [`${name} is broken by ${over / 60_000} min and no clash says so`] : []
      return Math.abs(up(clash.by) - over) <= near
        ? []
        : [`${name} is broken by ${over / 60_000} min, the clash says ${clash.by}`]
    }),
    ...[...found.keys()].flatMap((name) => (wanted.has(name) ? [] : [`${name} is a clash and is kept`])),
  ]
}

const isWelcome = (evening: Evening, course: string | null): boolean =>
  evening.courses.find(({ id }) => id === course)?.welcome ?? false

const sitDownOf = (evening: Evening): number => epochMsOf(evening, evening.sitDown)
