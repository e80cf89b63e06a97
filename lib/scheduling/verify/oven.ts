import type { Kit, Use } from '#lib/scheduling/problem.ts'
import { partiesOf } from './kit.ts'
import type { Hold, Scene } from './scene.ts'
import { roundUp } from './span.ts'
import { type Violation, violation } from './violation.ts'

const ROOM_C = 20

interface OvenHold extends Hold {
  readonly kit: Kit & { readonly kind: 'oven' }
  readonly use: Use & { readonly kind: 'oven' }
}

const isOven = (hold: Hold): hold is OvenHold => hold.kit.kind === 'oven' && hold.use.kind === 'oven'

/** H14: an oven has time to get from one temperature window to the next, and can reach each. */
export const h14 = ({ problem, holds }: Scene): Violation[] => {
  const ovens = holds.filter(isOven)
  const pairs = ovens.flatMap((a, index) => ovens.slice(index + 1).map((b): [OvenHold, OvenHold] => [a, b]))
  const apart = pairs
    .filter(([a, b]) => a.kit.id === b.kit.id && (a.planned || b.planned))
    .flatMap(([a, b]) => {
      const [earlier, later] = a.from <= b.from ? [a, b] : [b, a]
      const wanted = rampBetween(earlier, later)
      const found = later.from - earlier.to
      if (wanted === 0 || found >= wanted) return []
      return [violation('H14', later.from, { what: 'ramp', wanted, found }, { kit: [a.kit.id], ...partiesOf([earlier, later]) })]
    })
  const alone = ovens
    .filter(({ planned }) => planned)
    .flatMap((hold) => [...tooHot(hold), ...tooCold(hold, ovens, problem.horizon.from)])
  return [...apart, ...alone]
}

/** Ticks that the oven needs between two uses; 0 when one temperature serves both. */
const rampBetween = ({ kit, use }: OvenHold, { use: next }: OvenHold): number => {
  if (next.lowC > use.highC) return roundUp((next.lowC - use.highC) / kit.up)
  if (next.highC < use.lowC) return roundUp((use.lowC - next.highC) / kit.down)
  return 0
}

const tooHot = (hold: OvenHold): Violation[] =>
  hold.use.lowC <= hold.kit.maxC
    ? []
    : [
        violation(
          'H14',
          hold.from,
          { what: 'unfit', wanted: hold.kit.maxC, found: hold.use.lowC },
          {
            kit: [hold.kit.id],
            ...partiesOf([hold]),
          },
        ),
      ]

const tooCold = (hold: OvenHold, all: readonly OvenHold[], since: number): Violation[] => {
  const isFirst = !all.some(({ kit, from }) => kit.id === hold.kit.id && from < hold.from)
  const wanted = roundUp(Math.max(0, hold.use.lowC - ROOM_C) / hold.kit.up)
  const found = hold.from - since
  if (!hold.use.preheated || !isFirst || found >= wanted) return []
  return [violation('H14', hold.from, { what: 'ramp', wanted, found }, { kit: [hold.kit.id], ...partiesOf([hold]) })]
}

/** H15: while a door must stay shut, nothing else goes in or out of that oven, and nothing else is touched in it. */
export const h15 = ({ holds }: Scene): Violation[] => {
  const ovens = holds.filter(isOven)
  return ovens.flatMap((shut) => {
    const { by, use, kit, from } = shut
    if (!('activity' in by) || use.doorShut === undefined) return []
    const until = from + use.doorShut
    return ovens.flatMap((other) => {
      if (other.kit.id !== kit.id || !('activity' in other.by) || other.by.activity === by.activity) return []
      const { placement, planned } = other.by.activity
      const ends = planned || shut.planned ? [other.from, other.to] : []
      const moments = [...ends, ...placement.touches.map(({ at }) => at)]
      return [...new Set(moments)]
        .filter((at) => from < at && at < until)
        .map((at) =>
          violation('H15', at, { what: 'door', wanted: until, found: at }, { kit: [kit.id], ...partiesOf([shut, other]) }),
        )
    })
  })
}
