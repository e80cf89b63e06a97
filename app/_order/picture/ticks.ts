import { clockText } from '#app/_words/clock.ts'
import type { Zoom } from './lines.ts'
import type { Scale } from './scale.ts'

export interface Tick {
  readonly y: number
  /** The hour or half hour in figures; null for a short stroke. */
  readonly text: string | null
  readonly small: boolean
}

const MINUTE = 60_000
const ROOM = 19
/** What is written first, what is written where there is room, and what is a stroke: every so many minutes. */
const EVERY: Readonly<Record<Zoom, { readonly first: number; readonly next: number; readonly stroke: number }>> = {
  evening: { first: 60, next: 30, stroke: 15 },
  hour: { first: 30, next: 10, stroke: 5 },
  ten: { first: 5, next: 1, stroke: 1 },
}

/** Hours where there is room, half hours where there is more, quarters as short strokes; never beside a course's clock. Nearer, finer. */
export const ticksOf = (scale: Scale, taken: readonly number[], zone: string, zoom: Zoom): readonly Tick[] => {
  const { first, next, stroke } = EVERY[zoom]
  const step = stroke * MINUTE
  const ticks: { at: number; y: number; minute: number }[] = []
  for (let at = Math.ceil(scale.from / step) * step; at <= scale.to; at += step)
    ticks.push({ at, y: scale.y(at), minute: Number(clockText(at, zone).slice(3)) })
  const used = [...taken]
  const free = (y: number, room: number) => used.every((other) => Math.abs(other - y) >= room)
  const texts = new Map<number, boolean>()
  for (const every of [first, next])
    for (const { at, y, minute } of ticks)
      if (minute % every === 0 && !texts.has(at) && free(y, every === first ? ROOM : ROOM + 5)) {
        texts.set(at, every === next)
        used.push(y)
      }
  const strokes: number[] = []
  return ticks.flatMap(({ at, y }): Tick[] => {
    const small = texts.get(at)
    if (small !== undefined) return [{ y, text: clockText(at, zone), small }]
    if (strokes.some((other) => Math.abs(other - y) < 11) || !free(y, 9)) return []
    strokes.push(y)
    return [{ y, text: null, small: true }]
  })
}
