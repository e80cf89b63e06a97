import type { Lag, Problem } from '#lib/scheduling/problem.ts'
import { roundUp } from '#lib/scheduling/verify/span.ts'
import type { Option } from './brute-option.ts'

/**
 * Whether two options can stand in one schedule, as far as two alone can tell: what is refused here the verifier would
 * refuse in every schedule that holds both. Facts among themselves always can.
 */
export const fits = (problem: Problem, a: Option, b: Option): boolean => {
  if (!a.placement || !b.placement) return true
  if (!lagsHold(problem.lags, a, b)) return false
  if (!a.planned && !b.planned) return true
  return cooksFit(a, b) && ovensFit(problem, a, b) && ringsFit(a, b)
}

const lagsHold = (lags: readonly Lag[], a: Option, b: Option): boolean =>
  lags.every((lag) => {
    const [from, to] = lag.from === a.activity.id ? [a, b] : [b, a]
    if (lag.from !== from.activity.id || lag.to !== to.activity.id || !to.planned) return true
    const gap = to.start - (lag.edge === 'start' ? from.start : from.end)
    return gap >= lag.least && (lag.bound !== 'safety' || lag.most === undefined || gap <= lag.most)
  })

const cooksFit = (a: Option, b: Option): boolean => {
  const mayShareHands = a.isTrip && b.isTrip
  const isElsewhere = a.spot !== b.spot
  for (let cook = 0; cook < a.hands.length; cook += 1) {
    const [handsA, handsB, eyesA, eyesB] = [a.hands[cook] ?? 0, b.hands[cook] ?? 0, a.eyes[cook] ?? 0, b.eyes[cook] ?? 0]
    if (!mayShareHands && handsA & handsB) return false
    if (leaveApart(a, b, cook)) return false
    if (isElsewhere && (eyesA & (handsB | eyesB) || eyesB & handsA)) return false
  }
  return true
}

/** Carried by one cook in one hole, and not on one trip. */
const leaveApart = (a: Option, b: Option, cook: number): boolean =>
  a.planned && b.planned && (a.holes[cook] ?? -1) >= 0 && a.holes[cook] === b.holes[cook] && a.start !== b.start

const ringsFit = (a: Option, b: Option): boolean => {
  const isOneVessel = a.vessel !== null && a.vessel === b.vessel
  for (const here of a.holds) {
    if (here.use.kind !== 'ring') continue
    for (const there of b.holds) {
      if (there.use.kind !== 'ring') continue
      const isOneRing = here.kit === there.kit && here.unit === there.unit
      const meet = Math.max(here.from, there.from) < Math.min(here.to, there.to)
      if (isOneVessel ? !isOneRing || meet : isOneRing && meet) return false
    }
  }
  return true
}

const ovensFit = (problem: Problem, a: Option, b: Option): boolean => {
  for (const here of a.holds) {
    if (here.use.kind !== 'oven') continue
    for (const there of b.holds) {
      if (there.use.kind !== 'oven' || here.kit !== there.kit) continue
      const oven = problem.kit.find(({ id }) => id === here.kit)
      if (oven?.kind !== 'oven') continue
      const [first, second] = here.from <= there.from ? [here, there] : [there, here]
      if (first.use.kind !== 'oven' || second.use.kind !== 'oven') continue
      const hotter = second.use.lowC - first.use.highC
      const cooler = first.use.lowC - second.use.highC
      const ramp = hotter > 0 ? roundUp(hotter / oven.up) : cooler > 0 ? roundUp(cooler / oven.down) : 0
      if (ramp > 0 && second.from - first.to < ramp) return false
    }
  }
  return doorsFit(a, b) && doorsFit(b, a)
}

const doorsFit = (shut: Option, other: Option): boolean => {
  for (const here of shut.holds) {
    if (here.use.kind !== 'oven' || here.use.doorShut === undefined) continue
    const [from, until] = [here.from, here.from + here.use.doorShut]
    const isInside = (at: number) => from < at && at < until
    for (const there of other.holds) {
      if (there.use.kind !== 'oven' || there.kit !== here.kit) continue
      if (isInside(there.from) || isInside(there.to) || other.placement?.touches.some(({ at }) => isInside(at))) return false
    }
  }
  return true
}
