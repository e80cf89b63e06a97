import { type Cook, EYE_PIECE } from '#lib/scheduling/problem.ts'
import type { Busy, Placed, Scene } from './scene.ts'
import { isWithin, overlaps, type Span } from './span.ts'
import { type Violation, violation } from './violation.ts'

/** H6: as many different, known cooks as the mode asks; those who claimed come first. Of a fact, those who did it. */
export const h6 = ({ placed, cooks }: Scene): Violation[] =>
  placed.flatMap((one) => {
    const { activity, mode, start, fact } = one
    const chosen = one.placement.cooks
    const tell = (what: 'crowd' | 'unknown' | 'unclaimed' | 'moved', wanted: number, found: number) => [
      violation('H6', start, { what, wanted, found }, { activities: [activity.id], cooks: chosen }),
    ]
    if (fact) {
      const did = fact.cooks ?? []
      return sameSet(did, chosen) ? [] : tell('moved', did.length, chosen.length)
    }
    const wanted = { 'hands-on': mode.cooks, eye: 1, leave: 0 }[mode.care]
    if (chosen.length !== wanted || new Set(chosen).size !== wanted) return tell('crowd', wanted, chosen.length)
    if (chosen.some((id) => !cooks.has(id))) return tell('unknown', wanted, chosen.length)
    const due = activity.claimed.slice(0, wanted)
    const there = due.filter((id) => chosen.includes(id))
    return there.length < due.length ? tell('unclaimed', due.length, there.length) : []
  })

const sameSet = (a: readonly string[], b: readonly string[]): boolean => a.length === b.length && a.every((id) => b.includes(id))

const bothOf = (rule: 'H7' | 'H8', what: 'overlap' | 'elsewhere' | 'too-long', a: Busy, b: Busy): Violation =>
  violation(rule, Math.max(a.from, b.from), { what }, { activities: [a.of.activity.id, b.of.activity.id], cooks: [a.cook] })

/** Pairs of works of one cook that share a moment, at least one of them planned. */
function* clashing({ busy }: Scene): Generator<[Busy, Busy]> {
  for (const [index, a] of busy.entries())
    for (const b of busy.slice(index + 1))
      if (a.cook === b.cook && !isOneWork(a, b) && (a.planned || b.planned) && overlaps(a, b)) yield [a, b]
}

/** A cook named twice for one activity: H6 tells. */
const isOneWork = (a: Busy, b: Busy): boolean => a.of === b.of && a.kind !== 'touch' && b.kind !== 'touch'

/** H7: one hands-on thing at a time, but for what is carried on one trip. */
export const h7 = (scene: Scene): Violation[] =>
  [...clashing(scene)]
    .filter(([a, b]) => a.kind !== 'eye' && b.kind !== 'eye' && !isOneTrip(scene, a, b))
    .map(([a, b]) => bothOf('H7', 'overlap', a, b))

const isOneTrip = (scene: Scene, a: Busy, b: Busy): boolean => {
  const cook = scene.cooks.get(a.cook)
  if (!cook || a.kind !== 'hands-on' || b.kind !== 'hands-on' || !a.of.activity.road || !b.of.activity.road) return false
  return holes(cook).some((hole) => isWithin(a, hole) && isWithin(b, hole))
}

/** H20: what one cook carries in one hole leaves at one moment, but for what is on the road already. */
export const h20 = ({ busy, cooks }: Scene): Violation[] => {
  const carried = busy.filter((one) => one.planned && one.kind === 'hands-on' && one.of.activity.road)
  return carried.flatMap((a, index) =>
    carried.slice(index + 1).flatMap((b) => {
      const cook = a.cook === b.cook && a.from !== b.from ? cooks.get(a.cook) : undefined
      const isOneHole = cook && holes(cook).some((hole) => isWithin(a, hole) && isWithin(b, hole))
      if (!isOneHole) return []
      const activities = [a.of.activity.id, b.of.activity.id]
      return [violation('H20', Math.max(a.from, b.from), { what: 'apart' }, { activities, cooks: [a.cook] })]
    }),
  )
}

/** H8: while keeping an eye on something, a cook does nothing elsewhere, and nothing long. */
export const h8 = (scene: Scene): Violation[] =>
  [...clashing(scene)].flatMap(([a, b]) => {
    if (a.kind !== 'eye' && b.kind !== 'eye') return []
    const [here, there] = [a.of.activity, b.of.activity]
    if (here.place !== there.place || here.at !== there.at) return [bothOf('H8', 'elsewhere', a, b)]
    const isLong = [a, b].some(({ kind, from, to }) => kind !== 'eye' && to - from > EYE_PIECE)
    return isLong ? [bothOf('H8', 'too-long', a, b)] : []
  })

/** H9: attended activities and touches lie in one presence of the cook there; what is carried, in a hole on its way. */
export const h9 = (scene: Scene): Violation[] =>
  scene.busy
    .filter((one) => one.planned && !isThere(scene.cooks.get(one.cook), one.of, one, one.kind === 'touch'))
    .map((one) => violation('H9', one.from, { what: 'absent' }, { activities: [one.of.activity.id], cooks: [one.cook] }))

const isThere = (cook: Cook | undefined, { activity }: Placed, span: Span, isTouch: boolean): boolean => {
  if (!cook) return true
  const { place, road } = activity
  if (road && !isTouch)
    return holes(cook).some((hole) => hole.leaves === place && hole.reaches === road.to && isWithin(span, hole))
  return cook.presence.some((presence) => presence.place === place && isWithin(span, presence))
}

const holes = (cook: Cook) =>
  cook.presence.slice(1).flatMap((next, index) => {
    const before = cook.presence[index]
    return before ? [{ from: before.to, to: next.from, leaves: before.place, reaches: next.place }] : []
  })
