import type { At } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { dateAt } from '#lib/domain/time.ts'

const MINUTE = 60_000
const DAY = 24 * 60

const minutesOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))

const moved = (at: At, by: number): At => {
  const minutes = at.day * DAY + minutesOfDay(at.time) + by
  const day = Math.floor(minutes / DAY)
  const rest = minutes - day * DAY
  const two = (number: number) => String(number).padStart(2, '0')
  if (day < -7) return { day: -7, time: '00:00' }
  if (day > 1) return { day: 1, time: '23:59' }
  return { day, time: `${two(Math.floor(rest / 60))}:${two(rest % 60)}` }
}

const isAt = (value: object): value is At =>
  'day' in value && 'time' in value && typeof value.day === 'number' && typeof value.time === 'string'

const eachMoved = (value: unknown, by: number): unknown => {
  if (Array.isArray(value)) return value.map((one) => eachMoved(one, by))
  if (typeof value !== 'object' || value === null) return value
  if (isAt(value)) return moved(value, by)
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, eachMoved(one, by)]))
}

/**
 * The evening dated so that sit-down is so many minutes from now, to the minute, in UTC, whatever the time of day: all its wall-clock times
 * move along, across midnight too. Nothing has been told of it yet.
 */
export const tonightEvening = (base: Evening, nowMs: number, sitDownInMinutes: number): Evening => {
  const sitDown = Math.round(nowMs / MINUTE + sitDownInMinutes) * MINUTE
  const today = dateAt('UTC', sitDown)
  const wanted = Math.round((sitDown - Date.parse(`${today}T00:00:00Z`)) / MINUTE)
  const was = base.sitDown.day * DAY + minutesOfDay(base.sitDown.time)
  // The nearest of the same time today and on the day before or after, so that no time leaves the days that an evening has.
  const days = Math.round((wanted - was) / DAY)
  const by = wanted - was - days * DAY
  return {
    ...(eachMoved(base, by) as Evening),
    date: dateAt('UTC', sitDown, days),
    zone: 'UTC',
    night: [],
  }
}
