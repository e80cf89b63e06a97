import type {
  Activity,
  Bound,
  Cook,
  Delivery,
  Fact,
  Kit,
  Lag,
  Mode,
  Previous,
  Problem,
  Serving,
  Touch,
  Use,
} from '#lib/scheduling/problem.ts'
import { WEIGHTS } from '#lib/scheduling/problem.ts'
import { type Dice, dice } from './dice.ts'

/**
 * A random small problem of 1 to `most` activities that over many seeds uses everything a problem can hold. Its times lie
 * in [0, 31), so that brute force can solve it. The same seed gives the same problem.
 */
export const randomProblem = (seed: number, most = 6): Problem => {
  const d = dice(seed)
  const to = d.int(14, 24)
  const places = d.chance(0.3) ? ['home', 'mill'] : ['home']
  const cooks = cooksOf(d, places, to)
  const kit = places.flatMap((place) => kitOf(d, place))
  const servings = servingsOf(d, cooks, to)
  const night = d.chance(0.3)
  const now = night ? d.int(3, Math.floor(to / 2)) : undefined
  const deliveries = servings.flatMap(({ id }) => deliveriesOf(d, id, kit))
  const chains = chainsOf(d, deliveries, most)
  const made = chains.map((chain) => chainActivities(d, chain, { places, cooks, kit, to }))
  const activities = made.flat()
  const lags = [...made.flatMap((chain) => lagsOf(d, chain)), ...crossLags(d, activities)]
  const told = now === undefined || d.chance(0.3) ? [] : previousOf(d, activities, cooks, to)
  return {
    horizon: { from: 0, to },
    activities: now === undefined ? activities : withFacts(d, made, cooks, now),
    lags,
    together: activities.length > 2 && d.chance(0.2) ? [{ activities: activities.map(({ id }) => id), most: d.int(1, 2) }] : [],
    cooks,
    kit,
    servings: now === undefined ? servings : served(d, servings, now),
    deliveries,
    ...(now === undefined ? {} : { now }),
    ...(told.length > 0 ? { previous: told } : {}),
    weights: WEIGHTS,
  }
}

interface Setting {
  readonly places: readonly string[]
  readonly cooks: readonly Cook[]
  readonly kit: readonly Kit[]
  readonly to: number
}

const cooksOf = (d: Dice, places: readonly string[], to: number): Cook[] =>
  ['ann', 'bo', 'cy'].slice(0, d.pick([1, 2, 2, 2, 3])).map((id, index) => {
    const leaves = d.int(4, Math.floor(to / 2))
    const back = leaves + d.int(1, 5)
    const whole = [{ place: 'home', from: 0, to }]
    const broken = [
      { place: places.at(-1) ?? 'home', from: 0, to: leaves },
      { place: 'home', from: back, to },
    ]
    return {
      id,
      host: index === 0 || d.chance(0.4),
      eats: d.chance(0.75),
      pace: d.pick([1, 1, 1, 0.6, 1.1, 1.5]),
      presence: d.chance(places.length > 1 ? 0.7 : 0.25) ? broken : whole,
    }
  })

const kitOf = (d: Dice, place: string): Kit[] => {
  const id = (name: string) => `${place}-${name}`
  const oven = (name: string): Kit => ({
    kind: 'oven',
    id: id(name),
    place,
    shelves: d.int(1, 2),
    maxC: 250,
    up: d.pick([20, 40, 55.5]),
    down: d.pick([10, 20, 30]),
  })
  return [
    { kind: 'ring', id: id('medium'), place, size: 2, count: d.int(1, 2) },
    ...(d.chance(0.5) ? [{ kind: 'ring' as const, id: id('small'), place, size: 1, count: 1 }] : []),
    ...(d.chance(0.8) ? [oven('oven')] : []),
    ...(d.chance(0.15) ? [oven('other')] : []),
    { kind: 'store', id: id('top'), place, of: 'worktop', capacity: d.int(1, 3) },
  ]
}

const servingsOf = (d: Dice, cooks: readonly Cook[], to: number): Serving[] => {
  const sitDown = d.int(Math.ceil(to / 2), to - 3)
  const serving = (id: string, parts: Partial<Serving>): Serving => ({
    id,
    role: { kind: 'next' },
    eating: d.int(1, 4),
    clearing: d.int(0, 1),
    pouring: d.int(0, 1),
    wait: { ideal: [d.int(0, 2), d.int(2, 4)], most: d.int(3, 6) },
    ...(d.chance(0.2) ? { lead: d.pick(cooks).id } : {}),
    ...parts,
  })
  return [
    ...(d.chance(0.15)
      ? [serving('welcome', { role: { kind: 'welcome', latest: sitDown }, earliest: sitDown - d.int(4, 6), eating: 1 })]
      : []),
    serving('first', { role: { kind: 'first', sitDown }, earliest: sitDown }),
    ...(d.chance(0.6) ? [serving('next', d.chance(0.15) ? { earliest: d.int(sitDown, to) } : {})] : []),
  ]
}

const deliveriesOf = (d: Dice, serving: string, kit: readonly Kit[]): Delivery[] =>
  Array.from({ length: d.chance(0.25) ? 2 : 1 }, (_, index) => ({
    id: `${serving}-${index + 1}`,
    serving,
    early: d.pick([0, 2, 4, 8]),
    late: d.pick([0, 0, 1]),
    keeps: {
      most: d.int(0, 6),
      bound: bound(d, 0.2),
      place: 'home',
      uses: d.chance(0.35) ? [needOf(d, kit, true)] : [],
    },
    ...(d.chance(0.5) ? { carry: { most: d.int(4, 9), bound: bound(d, 0.3) } } : {}),
  }))

const bound = (d: Dice, safety: number): Bound => (d.chance(safety) ? 'safety' : 'quality')

const needOf = (d: Dice, kit: readonly Kit[], keeping: boolean): Use => {
  const kind = d.pick(keeping ? (['oven', 'store', 'ring'] as const) : (['ring', 'ring', 'oven', 'oven', 'store'] as const))
  if (kind === 'ring') return { kind, size: d.int(1, 2) }
  if (kind === 'store') return { kind, of: 'worktop', amount: d.int(1, 2) }
  const lowC = keeping ? 70 : d.pick([100, 140, 180, 220])
  const named = kit.filter((each) => each.kind === 'oven' && each.place === 'home')
  return {
    kind,
    shelves: d.chance(0.8) ? 1 : 2,
    lowC,
    highC: lowC + d.pick([10, 20, 60]),
    preheated: d.chance(0.3),
    ...(named.length > 0 && d.chance(0.1) ? { oven: d.pick(named).id } : {}),
    ...(d.chance(0.2) ? { doorShut: d.int(2, 4) } : {}),
  }
}

/** How many activities each delivery has (null: chores), `most` in all. */
const chainsOf = (d: Dice, deliveries: readonly Delivery[], most: number) => {
  let left = d.int(Math.min(2, most), most)
  const chains: { readonly delivery: string | null; readonly length: number }[] = []
  for (const { id } of deliveries) {
    const length = Math.min(left, d.int(1, 4))
    if (length > 0) chains.push({ delivery: id, length })
    left -= length
  }
  if (left > 0 && d.chance(0.6)) chains.push({ delivery: null, length: 1 })
  return chains
}

const chainActivities = (
  d: Dice,
  { delivery, length }: { readonly delivery: string | null; readonly length: number },
  setting: Setting,
): Activity[] => {
  const away = setting.places.length > 1 && length >= 2 && d.chance(0.6)
  const vessel = d.chance(0.2) ? { vessel: `pot-${delivery ?? 'chore'}` } : {}
  return Array.from({ length }, (_, index): Activity => {
    const carries = away && index === Math.min(1, length - 1)
    const place = away && index <= 1 ? 'mill' : 'home'
    const ways = carries ? 1 : d.pick([1, 1, 1, 2])
    const windowed = d.chance(0.12)
    return {
      id: `${delivery ?? 'chore'}-${'abcd'[index]}`,
      place,
      at: carries ? 'outside' : d.chance(0.1) ? 'table' : 'kitchen',
      ...(carries ? { road: { to: 'home' } } : {}),
      ...(windowed ? { from: d.int(0, 4) } : {}),
      ...(windowed && d.chance(0.5) ? { to: d.int(setting.to - 4, setting.to) } : {}),
      ...(delivery === null ? {} : { delivery }),
      plating: delivery !== null && index === length - 1 && d.chance(0.5),
      ...(carries ? {} : vessel),
      claimed: d.chance(0.25) ? d.some(setting.cooks, d.int(1, 2)).map(({ id }) => id) : [],
      modes: Array.from({ length: ways }, () => (carries ? carrying(d) : modeOf(d, setting))),
    }
  })
}

const carrying = (d: Dice): Mode => ({
  care: 'hands-on',
  cooks: 1,
  least: 1,
  likely: d.int(1, 2),
  most: 4,
  touches: [],
  uses: [],
})

const modeOf = (d: Dice, { cooks, kit }: Setting): Mode => {
  const care = d.pick(['hands-on', 'hands-on', 'eye', 'leave', 'leave'] as const)
  const likely = care === 'leave' ? d.int(2, 7) : d.int(1, 4)
  const uses = d.chance(0.7) ? [needOf(d, kit, false)] : []
  return {
    care,
    cooks: care === 'hands-on' && cooks.length > 1 && d.chance(0.2) ? 2 : 1,
    least: Math.max(1, likely - 1),
    likely,
    most: likely + 2,
    ...(care === 'leave' && d.chance(0.3) ? { upTo: likely + d.int(1, 3) } : {}),
    touches: care === 'leave' && d.chance(0.45) ? touchesOf(d, likely) : [],
    uses,
  }
}

const touchesOf = (d: Dice, likely: number): Touch[] => {
  const touch = (when: Touch['when']): Touch => ({ when, takes: 1, lateBy: when === 'in' ? 0 : d.int(0, 2) })
  return d.pick([
    () => [touch('in'), touch('out')],
    () => [touch('out')],
    () => [touch({ every: Math.max(2, Math.ceil(likely / 2)) })],
  ])()
}

const lagsOf = (d: Dice, chain: readonly Activity[]): Lag[] =>
  chain.slice(1).flatMap((to, index) => {
    const from = chain[index]
    if (!from || d.chance(0.08)) return []
    const edge = d.chance(0.85) ? 'end' : 'start'
    const least = d.pick([0, 0, 0, 1, 2])
    const most = d.chance(0.5) ? { most: least + d.int(0, 4) } : {}
    return [{ from: from.id, edge, to: to.id, least, ...most, bound: bound(d, 0.3) } satisfies Lag]
  })

const crossLags = (d: Dice, activities: readonly Activity[]): Lag[] => {
  const [from, to] = d.some(activities, 2)
  if (!from || !to || !d.chance(0.2)) return []
  return [{ from: from.id, edge: 'end', to: to.id, least: 0, ...(d.chance(0.4) ? { most: 6 } : {}), bound: bound(d, 0.2) }]
}

/** What cooks were told, roughly plausible. */
const previousOf = (d: Dice, activities: readonly Activity[], cooks: readonly Cook[], to: number): Previous[] =>
  d.some(activities, d.int(1, activities.length)).map(({ id, modes }) => {
    const mode = d.int(0, modes.length - 1)
    const count = modes[mode]?.care === 'leave' ? 0 : (modes[mode]?.cooks ?? 0)
    return {
      activity: id,
      start: d.int(0, to - 4),
      mode,
      cooks: d.some(cooks, count).map((cook) => cook.id),
      frozen: d.chance(0.2),
    }
  })

/** On the night: the beginnings of chains are done or under way. */
const withFacts = (d: Dice, chains: readonly (readonly Activity[])[], cooks: readonly Cook[], now: number): Activity[] =>
  chains.flatMap((chain) => {
    const happened = d.chance(0.5) ? d.int(1, chain.length) : 0
    return chain.map((activity, index): Activity => {
      if (index >= happened) return activity
      const start = d.int(0, now)
      const attending = activity.modes[0]?.care === 'leave' ? [] : d.some(cooks, 1).map(({ id }) => id)
      const who = d.chance(0.8) ? { cooks: attending } : {}
      const isLast = index === happened - 1
      const fact: Fact =
        isLast && d.chance(0.6)
          ? { kind: 'running', start, atLeast: d.int(1, 6), ...who }
          : { kind: 'done', start: Math.min(start, now - 1), end: now - d.int(0, Math.max(0, now - start - 1)), ...who }
      return { ...activity, fact }
    })
  })

const served = (d: Dice, servings: readonly Serving[], now: number): Serving[] =>
  servings.map((serving, index) =>
    index === 0 && d.chance(0.15)
      ? { ...serving, fact: { toTable: now - d.int(0, 2), ...(d.chance(0.3) ? { platesOff: now } : {}) } }
      : serving,
  )
