import type { Random } from '#lib/scheduling/random.ts'
import type { Direction } from './direction.ts'
import { type Desk, generate } from './generate.ts'

/** Schedules of one direction, and the length of each. */
interface Crowd {
  readonly starts: readonly Int32Array[]
  readonly spans: Int32Array
}

/** How many schedules are bred at a time. */
const CROWD = 40
/** How many children have some keys moved by up to as many ticks, and how many of their keys. */
const MOVED_CHILDREN = 0.5
const MOVED_KEYS = 0.02
const MOVED_BY = 20
/** Crowds in a row that are no shorter in all before a new one is begun. */
const PATIENCE = 10

/**
 * Two crowds of schedules, each bred from the other in the opposite direction: a genetic search over random keys (Debels &
 * Vanhoucke 2007, Operations Research 55:457-469) in which a child that is longer than its father gives way to the father,
 * justified to the other side (Valls, Ballestín, Quintanilla 2005, EJOR 165:375-386), so that no line ever gets longer.
 */
export interface ListSearch {
  readonly ways: readonly [Direction, Direction]
  readonly desk: Desk
  readonly random: Random
  readonly crowds: readonly [Crowd, Crowd]
  /** The direction of the crowd that was made last. */
  side: number
  /** The shortest schedule so far, in the direction in which it was found. */
  readonly best: Int32Array
  bestSide: number
  span: number
  /** The shortest sum of a crowd's lengths since it was begun, and how many crowds have come since that one. */
  shortest: number
  idle: number
  /** Whether a schedule read backwards is one: nothing has a `from`. */
  readonly bothWays: boolean
  /** Schedules generated. */
  steps: number
  readonly keys: Int32Array
  /** Per activity, how much of all stores it takes in a tick. */
  readonly weight: Float64Array
  readonly load: Float64Array
}

export const listSearch = (
  ways: readonly [Direction, Direction],
  desk: Desk,
  weight: Float64Array,
  random: Random,
): ListSearch => {
  const [{ count }] = ways
  const crowd = (): Crowd => ({
    starts: Array.from({ length: CROWD }, () => new Int32Array(count)),
    spans: new Int32Array(CROWD),
  })
  return {
    ways,
    desk,
    random,
    crowds: [crowd(), crowd()],
    side: 0,
    best: new Int32Array(count),
    bestSide: 0,
    span: Number.MAX_SAFE_INTEGER,
    shortest: Number.MAX_SAFE_INTEGER,
    idle: 0,
    bothWays: ways[0].from.every((from) => from === 0),
    steps: 0,
    keys: new Int32Array(count),
    weight,
    load: new Float64Array(desk.ticks + 2),
  }
}

/** Writes schedule k of one side from `keys`. */
const make = (search: ListSearch, side: number, k: number): void => {
  const crowd = search.crowds[side] as Crowd
  const starts = crowd.starts[k] as Int32Array
  const span = generate(search.desk, search.ways[side] as Direction, search.keys, starts)
  crowd.spans[k] = span
  search.steps += 1
  if (span >= search.span || (side === 1 && !search.bothWays)) return
  search.span = span
  search.bestSide = side
  search.best.set(starts)
}

/** The shortest schedule, read forward. */
export const forwardBest = ({ best, bestSide, span, ways: [{ lengths }] }: ListSearch): Int32Array =>
  bestSide === 0 ? best.slice() : best.map((start, i) => span - start - (lengths[i] as number))

/** A new crowd of forward schedules: those with the longest way to go first, more or less. */
const populate = (search: ListSearch): void => {
  const { ways, random, keys, crowds } = search
  const [{ tail, count }] = ways
  const longest = Math.max(...tail)
  search.side = 0
  for (let k = 0; k < crowds[0].starts.length; k++) {
    const spread = k === 0 ? 0 : longest * random.unit()
    for (let i = 0; i < count; i++) keys[i] = Math.floor(longest - (tail[i] as number) + spread * random.unit())
    make(search, 0, k)
  }
}

/** A schedule from elsewhere takes the place of the longest one. */
export const join = (search: ListSearch, starts: Int32Array, span: number): void => {
  const { crowds, side, ways } = search
  const crowd = crowds[side] as Crowd
  let worst = 0
  for (let k = 1; k < crowd.starts.length; k++) if ((crowd.spans[k] as number) > (crowd.spans[worst] as number)) worst = k
  const [{ lengths }] = ways
  const into = crowd.starts[worst] as Int32Array
  for (let i = 0; i < lengths.length; i++)
    into[i] = side === 0 ? (starts[i] as number) : span - (starts[i] as number) - (lengths[i] as number)
  crowd.spans[worst] = span
  search.best.set(starts)
  search.bestSide = 0
  search.span = span
}

/** The next crowd, in the other direction. */
const breed = (search: ListSearch): void => {
  const { random, crowds, side } = search
  const from = crowds[side] as Crowd
  const to = crowds[1 - side] as Crowd
  const size = from.starts.length
  for (let k = 0; k < size; k++) {
    const one = random.below(size)
    const other = random.below(size)
    cross(search, from, k, (from.spans[other] as number) < (from.spans[one] as number) ? other : one)
    make(search, 1 - side, k)
    if ((to.spans[k] as number) > (from.spans[k] as number)) {
      mirrorKeys(search, from, k)
      make(search, 1 - side, k)
    }
  }
  search.side = 1 - side
  const sum = to.spans.reduce((total, span) => total + span, 0)
  search.idle = sum < search.shortest ? 0 : search.idle + 1
  search.shortest = Math.min(search.shortest, sum)
}

/** Goes on by one crowd; one that gets nowhere gives way to a new one with the best schedule so far in it. */
export const advance = (search: ListSearch): void => {
  if (search.steps === 0) populate(search)
  else if (search.idle < PATIENCE) breed(search)
  else {
    populate(search)
    join(search, forwardBest(search), search.span)
    search.idle = 0
    search.shortest = Number.MAX_SAFE_INTEGER
  }
}

const mirrorKeys = ({ keys, ways: [{ lengths, count }] }: ListSearch, from: Crowd, k: number): void => {
  const starts = from.starts[k] as Int32Array
  const span = from.spans[k] as number
  for (let i = 0; i < count; i++) keys[i] = span - (starts[i] as number) - (lengths[i] as number)
}

/** Keys of a child in the other direction: its father's in the window where he is busiest, before and after it its mother's. */
const cross = (search: ListSearch, from: Crowd, father: number, mother: number): void => {
  const { random, keys } = search
  const [{ lengths, count }] = search.ways
  const his = from.starts[father] as Int32Array
  const hers = from.starts[mother] as Int32Array
  const hisSpan = from.spans[father] as number
  const herSpan = from.spans[mother] as number
  const window = Math.max(1, Math.floor(hisSpan * (0.25 + 0.5 * random.unit())))
  const opens = busiest(search, his, hisSpan, window)
  const closes = opens + window
  for (let i = 0; i < count; i++) {
    const end = (his[i] as number) + (lengths[i] as number)
    const back = herSpan - (hers[i] as number) - (lengths[i] as number)
    keys[i] = end > closes ? back : end > opens ? herSpan + closes - end : herSpan + window + back
  }
  if (random.unit() < MOVED_CHILDREN)
    for (let i = 0; i < count; i++)
      if (random.unit() < MOVED_KEYS) keys[i] = Math.max(0, (keys[i] as number) + random.below(2 * MOVED_BY + 1) - MOVED_BY)
}

/** Where a window of this width is busiest. */
const busiest = ({ load, weight, ways }: ListSearch, starts: Int32Array, span: number, window: number): number => {
  const [{ lengths, count }] = ways
  load.fill(0, 0, span + 2)
  for (let i = 0; i < count; i++) {
    const start = starts[i] as number
    const end = start + (lengths[i] as number)
    load[start] = (load[start] as number) + (weight[i] as number)
    load[end] = (load[end] as number) - (weight[i] as number)
  }
  let rate = 0
  let sum = 0
  for (let t = 0; t <= span; t++) {
    rate += load[t] as number
    load[t] = sum
    sum += rate
  }
  let best = 0
  let most = -1
  for (let t = 0; t + window <= span; t++) {
    const use = (load[t + window] as number) - (load[t] as number)
    if (use <= most) continue
    most = use
    best = t
  }
  return best
}
