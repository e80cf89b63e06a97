import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs } from '#lib/domain/time.ts'
import { brokenKit, wrongClashes } from './check-kit.ts'
import { lagTroubles } from './check-order.ts'
import { brokenRules, GRID, ms } from './check-rules.ts'

/** Each planned step may start as much later as its slack says, all else fixed, and not half a minute more. In words. */
export const wrongSlack = (evening: Evening, order: RunningOrder): string[] =>
  order.cues.flatMap((cue) => {
    if (cue.state === 'running' || cue.state === 'done') return []
    const slack = secondsOf(cue.slack) * 1000
    const name = `${cue.step}#${cue.batch}`
    const within = slack > 0 ? broken(evening, later(evening, order, cue, slack)) : []
    if (within.length > 0) return [`${name} has not a slack of ${cue.slack}: ${within.join(', ')}`]
    const past = broken(evening, later(evening, order, cue, slack + GRID))
    return past.length > 0 ? [] : [`${name} has more slack than ${cue.slack}`]
  })

const broken = (evening: Evening, order: RunningOrder): string[] => [
  ...brokenRules(evening, order),
  ...brokenKit(evening, order),
  // How late a dish comes after its course was served is told, but no wish.
  ...wrongClashes(evening, order).filter(
    (what) => isMore(what) && !evening.dishes.some(({ id }) => what.startsWith(`wait ${id} `)),
  ),
  ...lagTroubles(evening, order).filter((what) => !what.includes('is kept') && isMore(what)),
]

/** A wish that is broken by more than its clash says: less is no harm. */
const isMore = (what: string): boolean => {
  const [, amount, unit, said] = / is broken by ([\d.]+) (min|s),? .*says (\S+)$/.exec(what) ?? []
  if (amount === undefined || said === undefined) return !what.includes('is a clash and is kept')
  return said === 'so' || said === 'undefined' || Number(amount) * (unit === 'min' ? 60 : 1) > secondsOf(said)
}

/** The order with one cue so much later, its touches with it; a dish that waits for it waits so much less. */
const later = (evening: Evening, order: RunningOrder, which: Cue, by: number): RunningOrder => {
  const moved = (instant: string) => instantOfMs(evening, ms(instant) + by)
  const cues = order.cues.map((cue) =>
    cue === which
      ? {
          ...cue,
          start: moved(cue.start),
          end: moved(cue.end),
          touches: cue.touches.map((touch) => ({ ...touch, at: moved(touch.at) })),
        }
      : cue,
  )
  const dish = evening.steps.find(({ id }) => id === which.step)?.dish
  const ends = cues
    .filter((cue) => evening.steps.some(({ id, dish: of }) => id === cue.step && of === dish))
    .map(({ end }) => ms(end))
  const keeping = order.keeping.flatMap((keep) => {
    if (keep.dish !== dish) return [keep]
    const from = Math.max(...ends)
    return from < ms(keep.to) ? [{ ...keep, from: instantOfMs(evening, from) }] : []
  })
  return { ...order, cues: cues.toSorted((a, b) => ms(a.start) - ms(b.start)), keeping }
}
