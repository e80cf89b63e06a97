import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { OvenNow } from './board.ts'
import type { Moment } from './moment.ts'

type Line = RunningOrder['ovens'][number]['line']

const ROOM_C = 20
/** The order tells temperatures to a tenth of a degree. */
const SAME_C = 0.15

/** An oven's temperature at a moment by the order's line; as cold as a room before and after it. */
export const temperatureAt = (line: Line, at: number): number => {
  const after = line.findIndex((point) => msOfInstant(point.at) > at)
  const [from, to] = [line[after - 1], line[after]]
  if (!from || !to) return after === -1 ? (line.at(-1)?.c ?? ROOM_C) : ROOM_C
  const [t0, t1] = [msOfInstant(from.at), msOfInstant(to.at)]
  return from.c + ((to.c - from.c) * (at - t0)) / (t1 - t0)
}

type Trend = Exclude<OvenNow['trend'], 'off'>
interface Stretch {
  readonly from: number
  readonly to: number
  readonly toC: number
  readonly trend: Trend
}

const trendOf = (from: number, to: number): Trend => (Math.abs(to - from) <= SAME_C ? 'level' : to > from ? 'up' : 'down')

/** The line as stretches that go one way. */
const stretchesOf = (line: Line): Stretch[] => {
  const found: Stretch[] = []
  for (const [index, point] of line.entries()) {
    const next = line[index + 1]
    if (!next) continue
    const made = { from: msOfInstant(point.at), to: msOfInstant(next.at), toC: next.c, trend: trendOf(point.c, next.c) }
    const last = found.at(-1)
    if (last && last.trend === made.trend) found[found.length - 1] = { ...last, to: made.to, toC: made.toC }
    else found.push(made)
  }
  return found
}

const isCoolingOff = (stretch: Stretch, all: readonly Stretch[]): boolean => stretch.trend === 'down' && stretch === all.at(-1)

const kindOf = (stretch: Stretch, all: readonly Stretch[]): 'up' | 'down' | 'off' =>
  isCoolingOff(stretch, all) ? 'off' : stretch.trend === 'up' ? 'up' : 'down'

/** Every moment at which somebody turns an oven up (or on), down or off, and to what. */
export const ovenTurns = (
  line: Line,
): readonly { readonly at: number; readonly kind: 'up' | 'down' | 'off'; readonly toC: number }[] => {
  const all = stretchesOf(line)
  return all
    .filter(({ trend }) => trend !== 'level')
    .map((stretch) => ({ at: stretch.from, kind: kindOf(stretch, all), toC: Math.round(stretch.toC) }))
}

/** Each oven that the order uses: how hot it is, what it does next, and what is in it. */
export const ovensNow = ({ evening, order, works, at }: Moment): readonly OvenNow[] =>
  order.ovens.flatMap(({ kit, line }): OvenNow[] => {
    const kitchen = evening.kitchens.find((each) => each.kit.some(({ id }) => id === kit))
    if (!kitchen || line.length === 0) return []
    const stretches = stretchesOf(line)
    const current = stretches.find(({ from, to }) => from <= at && at < to)
    const turn = stretches.find(({ from, trend }) => from > at && trend !== 'level')
    const c = Math.round(temperatureAt(line, at))
    const inside = works.filter(({ cue, isBegun }) => isBegun && cue.kit.some(({ id }) => id === kit))
    return [
      {
        kitchen: kitchen.id,
        kit,
        c,
        trend: current === undefined || isCoolingOff(current, stretches) ? 'off' : current.trend,
        toC: Math.round(current?.toC ?? ROOM_C),
        next: turn ? { at: turn.from, kind: kindOf(turn, stretches), toC: Math.round(turn.toC) } : null,
        inside: inside.map(({ step, cue, dish, touches, end }) => ({
          step: step.id,
          batch: cue.batch,
          dish: dish?.id ?? null,
          out: touches.find(({ what }) => what === 'out')?.at ?? end,
        })),
      },
    ]
  })
