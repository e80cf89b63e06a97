import type { Problem } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { networkOf } from './network.ts'
import { slide, slidesOf } from './slide.ts'
import { isBetter, isOver, isWorth, type Judged, mostBlamed, type Trial, tried } from './trial.ts'

/** How far a step is slid, in ticks: earlier, or later where below 0. */
const TICKS: readonly number[] = [2, 4, 8, 16, 32, 64, -4, -16, -32]
/** How far later what is early for nothing. */
const BACK: readonly number[] = [64, 32, 16, 8, 4]
/** How soon after a step what follows on its kit is in its way, and how much earlier than it that may be put. */
const SOON = 120
/** One night more or less of some hundreds says nothing. */
const NOISE = 0.0026
const GAPS: readonly number[] = [2, 20, 60]

/** Slides what holds courses back forward in time, with what it drags along, as long as that makes them likelier. */
export const likelier = (task: Trial, from: Judged): Judged => {
  const { problem } = task
  let best = from
  for (let found = true; found && best.short > 0 && !isOver(task); ) {
    found = false
    const slides = slidesOf(problem, best.schedule, networkOf(problem, best.schedule))
    for (const activity of mostBlamed(problem, best.simulated)) {
      let own: Judged | undefined
      for (const by of TICKS) {
        const made = tried(task, slide(slides, activity, by))
        if (!made || !isWorth(task, made) || !isBetter(made, own ?? best)) continue
        own = made
      }
      if (!own) continue
      best = own
      found = true
      break
    }
  }
  return best
}

/** Slides what need not be so early back, the first to be over first, as long as no course is less likely and it is cheaper. */
export const later = (task: Trial, from: Judged): Judged => {
  const { problem } = task
  let best = from
  const order = problem.activities.flatMap(({ id, fact, delivery }, number) => {
    const end = from.schedule.placements.find((one) => one.activity === id)?.end
    return fact || delivery === undefined || end === undefined ? [] : [{ number, end }]
  })
  let slides = slidesOf(problem, best.schedule, networkOf(problem, best.schedule))
  for (const { number } of order.sort((a, b) => a.end - b.end))
    for (const by of BACK) {
      if (isOver(task)) return best
      const made = tried(task, slide(slides, number, -by)) ?? tried(task, putLater(task, best.schedule, number, by))
      if (!made || made.short > best.short + NOISE || made.cost.total >= best.cost.total) continue
      best = made
      slides = slidesOf(problem, best.schedule, networkOf(problem, best.schedule))
    }
  return best
}

/** What follows a blamed step on its kit, and might as well come before it, is put there. */
export const swapped = (task: Trial, from: Judged): Judged => {
  const { problem } = task
  let best = from
  for (const number of mostBlamed(problem, from.simulated)) {
    const blamed = from.schedule.placements.find((one) => one.activity === problem.activities[number]?.id)
    if (!blamed) continue
    for (const next of followers(problem, from.schedule, blamed))
      for (const gap of GAPS) {
        if (isOver(task)) return best
        task.tries--
        const by = blamed.start - gap - next.end
        const put = repair(problem, moved(from.schedule, next, by))
        const isBefore = put.placements.some((one) => one.activity === next.activity && one.end <= blamed.start)
        const made = isBefore ? tried(task, put) : null
        const slid = made && isWorth(task, made, 0) ? likelier(task, made) : null
        if (slid && isWorth(task, slid) && isBetter(slid, best)) best = slid
      }
    if (best !== from) return best
  }
  return best
}

/** Something left alone that can be put later in another order of hands than it has. */
const putLater = (task: Trial, schedule: Schedule, number: number, by: number): Schedule | undefined => {
  const { problem } = task
  const activity = problem.activities[number]
  const one = schedule.placements.find((other) => other.activity === activity?.id)
  if (!one || activity?.modes[one.mode]?.care !== 'leave') return undefined
  task.tries--
  const put = repair(problem, moved(schedule, one, by))
  return put.placements.some((other) => other.activity === one.activity && other.start === one.start + by) ? put : undefined
}

const followers = ({ lags }: Problem, { placements }: Schedule, one: Placement): Placement[] =>
  placements.filter(
    (other) =>
      other.start >= one.end &&
      other.start < one.end + SOON &&
      other.kit.some(({ id, unit }) => one.kit.some((held) => held.id === id && held.unit === unit)) &&
      !lags.some(({ from, to }) => from === one.activity && to === other.activity),
  )

const moved = (schedule: Schedule, one: Placement, by: number): Schedule => ({
  ...schedule,
  placements: schedule.placements.map((other) =>
    other === one
      ? {
          ...one,
          start: one.start + by,
          end: one.end + by,
          touches: one.touches.map((touch) => ({ ...touch, at: touch.at + by })),
        }
      : other,
  ),
})
