import { dayOf } from '#app/_words/clock.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import type { Shape } from './columns.ts'
import type { Doing } from './doings.ts'
import type { Zoom } from './lines.ts'
import type { Pace } from './scale.ts'

export const MINUTE = 60_000

/** The moments of the evening's own day that the drawing hangs on. */
export interface Frame {
  readonly from: number
  readonly to: number
  readonly guestsFrom: number
  readonly sitDown: number
  /** The first course that is not the welcome: from here on cooks are at the table or missed there. */
  readonly seated: number
  readonly last: number
}

/** The first moment of the evening's own day that shows: the day before is folded above. */
export const frameOf = (evening: Evening, order: RunningOrder, all: readonly Doing[]): Frame => {
  const guestsFrom = epochMsOf(evening, evening.guestsFrom)
  const sitDown = epochMsOf(evening, evening.sitDown)
  const welcome = new Set(evening.courses.filter((course) => course.welcome).map((course) => course.id))
  const moments = order.courses.map((course) => Date.parse(course.toTable))
  const seatedMoments = order.courses.filter((course) => !welcome.has(course.course)).map((course) => Date.parse(course.toTable))
  const seated = Math.min(...seatedMoments, ...(seatedMoments.length === 0 ? [sitDown] : []))
  const last = Math.max(sitDown, ...moments)
  const today = all.filter((doing) => dayOf(evening, doing.from) >= 0)
  const ends = order.courses.map((course) => Date.parse(course.platesOff))
  return {
    from: Math.min(guestsFrom, sitDown, ...moments, ...today.map((doing) => doing.from)) - 4 * MINUTE,
    to: Math.max(last + 15 * MINUTE, ...ends, ...today.map((doing) => doing.to)) + 2 * MINUTE,
    guestsFrom,
    sitDown,
    seated,
    last,
  }
}

/** How long nothing may happen before a stretch is folded, how small it then is, and what stays around it. */
const FOLDS: Readonly<Record<Zoom, { quiet: number; perMinute: number; after: number; before: number }>> = {
  evening: { quiet: 75 * MINUTE, perMinute: 0.12, after: 12 * MINUTE, before: 8 * MINUTE },
  hour: { quiet: 40 * MINUTE, perMinute: 1, after: 6 * MINUTE, before: 4 * MINUTE },
  ten: { quiet: 14 * MINUTE, perMinute: 4, after: 3 * MINUTE, before: 2 * MINUTE },
}
/** Pixels a minute: about an hour, about ten minutes on a screen. */
const EVEN: Readonly<Record<Exclude<Zoom, 'evening'>, number>> = { hour: 11, ten: 66 }

/** Slow in the afternoon, wide at the table, even when looked at closely; stretches in which nobody does anything are folded. */
export const pacesOf = (frame: Frame, events: readonly number[], shape: Shape, zoom: Zoom): readonly Pace[] => {
  const wide = shape === 'wide'
  const before = Math.min(frame.guestsFrom, frame.seated - 30 * MINUTE) - 45 * MINUTE
  const near = frame.seated - 15 * MINUTE
  const paceAt = (ms: number): number => {
    if (zoom !== 'evening') return EVEN[zoom]
    if (ms < before) return wide ? 0.5 : 0.4
    if (ms < near) return wide ? 1.3 : 1
    return ms < frame.last ? (wide ? 2.9 : 2.4) : wide ? 1.6 : 1.2
  }
  const fold = FOLDS[zoom]
  const paces: Pace[] = [frame.from, before, near, frame.last].map((at) => ({ at, perMinute: paceAt(at) }))
  const sorted = [...new Set(events)].filter((ms) => ms >= frame.from && ms <= frame.to).sort((a, b) => a - b)
  for (const [index, at] of sorted.entries()) {
    const next = sorted[index + 1]
    if (next === undefined || next - at < fold.quiet || (zoom === 'evening' && next > near)) continue
    const end = next - fold.before
    paces.push({ at: at + fold.after, perMinute: fold.perMinute }, { at: end, perMinute: paceAt(end) })
  }
  return paces.sort((a, b) => a.at - b.at)
}
