import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { dice } from './dice.ts'

const MINUTE = 60_000

/**
 * The evening some way into its night, as its running order said but for slips of a few minutes: what should have begun
 * has mostly begun, what should be over is mostly over, and some things need longer.
 */
export const randomNight = (evening: Evening, order: RunningOrder, seed: number): { evening: Evening; now: string } => {
  const d = dice(seed)
  const instant = (ms: number) => instantOfMs(evening, ms)
  const first = order.courses[0]?.toTable ?? order.origin
  const now = msOfInstant(first) + d.int(-150, 90) * MINUTE
  const by = evening.cooks[0]?.id ?? ''
  const steps = evening.steps.flatMap((step): NightFact[] => {
    const cues = order.cues.filter((cue) => cue.step === step.id)
    if (cues.length === 0) return []
    const started = Math.min(...cues.map(({ start }) => msOfInstant(start))) + d.int(-3, 5) * MINUTE
    const ends = Math.max(...cues.map(({ end }) => msOfInstant(end))) + d.int(-2, 8) * MINUTE
    if (started > now || d.chance(0.05)) return []
    const fact = { step: step.id, started: instant(started), by }
    if (ends <= now && d.chance(0.9)) return [{ ...fact, done: instant(Math.max(started, ends)) }]
    return [d.chance(0.4) ? { ...fact, extra: `PT${d.pick([5, 10, 20])}M` } : fact]
  })
  const courses = order.courses.flatMap((course): NightFact[] => {
    const served = msOfInstant(course.toTable) + d.int(0, 4) * MINUTE
    const off = msOfInstant(course.platesOff) + d.int(0, 6) * MINUTE
    if (served > now) return []
    return [{ course: course.course, toTable: instant(served), ...(off <= now ? { platesOff: instant(off) } : {}), by }]
  })
  return { evening: { ...evening, night: [...steps, ...courses] }, now: instant(now) }
}
