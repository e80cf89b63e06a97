import type { Network } from './network.ts'

/** A network in topological order, in typed arrays: event i waits for arcs first[i] … first[i + 1] − 1. */
export interface Walk {
  readonly events: number
  readonly release: Float64Array
  readonly first: Int32Array
  readonly from: Int32Array
  readonly lag: Float64Array
  /** The draw whose length the arc has, or −1; and the arc of each draw. */
  readonly drawOf: Int32Array
  readonly arcOf: Int32Array
  readonly firstPull: Int32Array
  readonly pullFrom: Int32Array
  readonly pullMost: Float64Array
  /** Gates firstGate[i] … of event i: heldFrom and heldAmount from heldFirst[gate] on. */
  readonly firstGate: Int32Array
  readonly gateFree: Float64Array
  readonly heldFirst: Int32Array
  readonly heldFrom: Int32Array
  readonly heldAmount: Float64Array
  /** Where each event of the network stands in the order. */
  readonly at: Int32Array
  readonly time: Float64Array
}

/** Post: every arc leads forwards. Arcs that close a circle, which only what has happened can, are left out. */
export const walkOf = ({ release, arcs, gates, pulls, draws }: Network): Walk => {
  const events = release.length
  const at = order(release, [...arcs, ...pulls, ...gates.flatMap(({ to, held }) => held.map(({ from }) => ({ from, to })))])
  const place = (event: number) => at[event] as number
  const sorted = <T extends { readonly to: number }>(some: readonly T[]): T[] =>
    [...some].sort((a, b) => place(a.to) - place(b.to))
  const forwards = <T extends { readonly from: number; readonly to: number }>(some: readonly T[]): T[] =>
    sorted(some.filter(({ from, to }) => place(from) < place(to)))
  const kept = forwards(arcs)
  const pulled = forwards(pulls)
  const gated = sorted(gates)
  const held = gated.map(({ to, held: all }) => all.filter(({ from }) => place(from) < place(to)))
  const heldFirst = new Int32Array(gated.length + 1)
  for (const [i, own] of held.entries()) heldFirst[i + 1] = (heldFirst[i] as number) + own.length
  const arcOf = new Int32Array(draws.length).fill(-1)
  for (const [i, { draw }] of kept.entries()) if (draw !== undefined) arcOf[draw] = i
  const released = new Float64Array(events)
  for (const [i, tick] of release.entries()) released[place(i)] = tick
  return {
    events,
    release: released,
    first: starts(events, kept, at),
    from: Int32Array.from(kept, (arc) => place(arc.from)),
    lag: Float64Array.from(kept, (arc) => arc.lag),
    drawOf: Int32Array.from(kept, (arc) => arc.draw ?? -1),
    arcOf,
    firstPull: starts(events, pulled, at),
    pullFrom: Int32Array.from(pulled, (pull) => place(pull.from)),
    pullMost: Float64Array.from(pulled, (pull) => pull.most),
    firstGate: starts(events, gated, at),
    gateFree: Float64Array.from(gated, (gate) => gate.free),
    heldFirst,
    heldFrom: Int32Array.from(held.flat(), (one) => place(one.from)),
    heldAmount: Float64Array.from(held.flat(), (one) => one.amount),
    at,
    time: new Float64Array(events),
  }
}

const starts = (events: number, sorted: readonly { readonly to: number }[], at: Int32Array): Int32Array => {
  const first = new Int32Array(events + 1)
  for (const { to } of sorted) first[(at[to] as number) + 1] = (first[(at[to] as number) + 1] as number) + 1
  for (let i = 0; i < events; i++) first[i + 1] = (first[i + 1] as number) + (first[i] as number)
  return first
}

/** Kahn 1962, "Topological sorting of large networks"; in a circle the first event goes on without waiting. */
const order = (release: readonly number[], arcs: readonly { readonly from: number; readonly to: number }[]): Int32Array => {
  const waits = new Int32Array(release.length)
  const after: number[][] = release.map(() => [])
  for (const { from, to } of arcs) {
    waits[to] = (waits[to] as number) + 1
    after[from]?.push(to)
  }
  const at = new Int32Array(release.length).fill(-1)
  const open = release.flatMap((_, i) => ((waits[i] as number) === 0 ? [i] : []))
  for (let placed = 0; placed < release.length; placed++) {
    const next = open.pop() ?? at.indexOf(-1)
    at[next] = placed
    for (const to of after[next] ?? []) {
      waits[to] = (waits[to] as number) - 1
      if ((waits[to] as number) === 0 && (at[to] as number) < 0) open.push(to)
    }
  }
  return at
}

/** Every event as early as its release, its pulls, its arcs and its gates allow: the longest path in one pass. */
export const pass = (walk: Walk): void => {
  const { events, release, first, from, lag, firstPull, pullFrom, pullMost, firstGate, time } = walk
  for (let i = 0; i < events; i++) {
    let t = release[i] as number
    for (let k = firstPull[i] as number; k < (firstPull[i + 1] as number); k++) {
      const latest = (time[pullFrom[k] as number] as number) + (pullMost[k] as number)
      if (latest < t) t = latest
    }
    for (let k = first[i] as number; k < (first[i + 1] as number); k++) {
      const soonest = (time[from[k] as number] as number) + (lag[k] as number)
      if (soonest > t) t = soonest
    }
    for (let k = firstGate[i] as number; k < (firstGate[i + 1] as number); k++) t = opens(walk, k, t)
    time[i] = t
  }
}

/** The first moment from `t` on at which so little is still held that the gate is open. */
const opens = ({ gateFree, heldFirst, heldFrom, heldAmount, time }: Walk, gate: number, t: number): number => {
  const last = heldFirst[gate + 1] as number
  for (let open = t; ; ) {
    let held = 0
    let next = Number.POSITIVE_INFINITY
    for (let k = heldFirst[gate] as number; k < last; k++) {
      const until = time[heldFrom[k] as number] as number
      if (until <= open) continue
      held += heldAmount[k] as number
      if (until < next) next = until
    }
    if (held <= (gateFree[gate] as number)) return open
    open = next
  }
}

/** The arcs that hold an event back to its time, from it to one that nothing held back. Pre: after a pass. */
export const heldBackBy = (walk: Walk, event: number): number[] => {
  const { release, from, time } = walk
  const arcs: number[] = []
  for (let i = event; i >= 0 && (time[i] as number) > (release[i] as number); ) {
    const arc = bindingArc(walk, i)
    if (arc >= 0) arcs.push(arc)
    i = arc >= 0 ? (from[arc] as number) : bindingHold(walk, i)
  }
  return arcs
}

const bindingArc = ({ first, from, lag, time }: Walk, i: number): number => {
  for (let k = first[i] as number; k < (first[i + 1] as number); k++)
    if ((time[from[k] as number] as number) + (lag[k] as number) >= (time[i] as number)) return k
  return -1
}

const bindingHold = ({ firstGate, heldFirst, heldFrom, time }: Walk, i: number): number => {
  const last = heldFirst[firstGate[i + 1] as number] as number
  for (let k = heldFirst[firstGate[i] as number] as number; k < last; k++)
    if (time[heldFrom[k] as number] === time[i]) return heldFrom[k] as number
  return -1
}
