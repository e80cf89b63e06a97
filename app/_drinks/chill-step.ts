import { minutesBefore } from '#app/_chores/usual-chores.ts'
import { countOf, listText } from '#app/_words/clock.ts'
import { durationOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant, type WallTime, wallTimeOfMs } from '#lib/domain/time.ts'
import type { Amount } from '#lib/drinks/amounts.ts'
import type { Chilling } from '#lib/drinks/cold.ts'

type Chore = Omit<Step, 'order' | 'dish' | 'role'>

const LONGEST_ID = 40
/** A bottle may stand there this much longer: somebody puts it in when it suits. */
const LONGER_MINUTES = 180

/** The id of the chore that chills a course's drinks: one for each course, whoever asks for it. */
export const chillId = (course: string): string => `c-${course}`.slice(0, LONGEST_ID)

/** When a course's drinks are poured: with the course where that is planned, otherwise when guests come or sit down. */
export const pouredAt = (evening: Evening, course: string, order: RunningOrder | null): WallTime => {
  const planned = order?.courses.find((each) => each.course === course)
  if (planned) return wallTimeOfMs(evening, msOfInstant(planned.toTable))
  return evening.courses.find(({ id }) => id === course)?.welcome ? evening.guestsFrom : evening.sitDown
}

/** "2 bottles of Dry cider and one of Cold tea". */
const bottlesText = (evening: Evening, chilling: Chilling, amounts: readonly Amount[]): string =>
  listText(
    chilling.drinks.map((id) => {
      const bottles = amounts.find(({ drink }) => drink === id)?.bottles ?? 0
      return `${countOf(bottles, 'bottle')} of ${evening.drinks.find((drink) => drink.id === id)?.name ?? 'a drink'}`
    }),
  )

const wholeMinutes = (minutes: number): string => durationOf(Math.ceil(minutes) * 60)

/** The chore that chills a course's drinks, ready when they are poured: taking them out belongs to the pouring. */
export const chillStep = (evening: Evening, chilling: Chilling, amounts: readonly Amount[], poured: WallTime): Chore => {
  const upTo = Math.ceil(chilling.minutes.most) + LONGER_MINUTES
  const course = evening.courses.find(({ id }) => id === chilling.course)?.name ?? ''
  return {
    id: chillId(chilling.course),
    does: `Into the fridge for ${course}: ${bottlesText(evening, chilling, amounts)}`.slice(0, 400),
    where: 'kitchen',
    ways: [
      {
        care: 'leave',
        cooks: 1,
        takes: {
          least: wholeMinutes(chilling.minutes.least),
          likely: wholeMinutes(chilling.minutes.likely),
          most: wholeMinutes(chilling.minutes.most),
        },
        upTo: durationOf(upTo * 60),
        touches: [{ when: 'in', does: 'bottles into the fridge', takes: 'PT2M', lateBy: 'PT5M' }],
        uses: [{ kind: 'cold', keep: 'cold', places: Math.max(1, chilling.places) }],
      },
    ],
    after: [],
    earliest: minutesBefore(poured, upTo),
    latest: poured,
  }
}

/** Whether the chore in the plan is no longer what it would be now; minutes by which a course moves do not count. */
export const isOutOfDate = (step: Step, now: Chore): boolean =>
  step.does !== now.does ||
  JSON.stringify(step.ways.map(({ takes, uses }) => [takes, uses])) !==
    JSON.stringify(now.ways.map(({ takes, uses }) => [takes, uses]))
