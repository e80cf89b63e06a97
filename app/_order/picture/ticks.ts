import { clockText } from '#app/_words/clock.ts'
import type { Scale } from './scale.ts'

export interface Tick {
  readonly y: number
  /** The hour or half hour in figures; null for a short stroke. */
  readonly text: string | null
  readonly small: boolean
}

const QUARTER = 15 * 60_000
const ROOM = 19

/** Hours where there is room, half hours where there is more, quarters as short strokes; never beside a course's clock. */
export const ticksOf = (scale: Scale, taken: readonly number[], zone: string): readonly Tick[] => {
  const quarters: { at: number; y: number; minute: number }[] = []
  for (let at = Math.ceil(scale.from / QUARTER) * QUARTER; at <= scale.to; at += QUARTER)
    quarters.push({ at, y: scale.y(at), minute: Number(clockText(at, zone).slice(3)) })
  const used = [...taken]
  const free = (y: number, room: number) => used.every((other) => Math.abs(other - y) >= room)
  const texts = new Map<number, boolean>()
  for (const pass of [0, 30])
    for (const { at, y, minute } of quarters)
      if (minute === pass && free(y, pass === 0 ? ROOM : ROOM + 5)) {
        texts.set(at, pass === 30)
        used.push(y)
      }
  const strokes: number[] = []
  return quarters.flatMap(({ at, y }): Tick[] => {
    const small = texts.get(at)
    if (small !== undefined) return [{ y, text: clockText(at, zone), small }]
    if (strokes.some((other) => Math.abs(other - y) < 11) || !free(y, 9)) return []
    strokes.push(y)
    return [{ y, text: null, small: true }]
  })
}
