import type { At, Span } from '#lib/domain/atoms.ts'
import { durationOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step, Touch, Way } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

/** A chore before it has an id and a place. */
export type Chore = Pick<Step, 'does' | 'where' | 'ways' | 'earliest' | 'latest'>

type Asked = Pick<Evening, 'guestsFrom' | 'sitDown' | 'covers'>

const DAY_MINUTES = 1440
const FIRST_DAY = -7

/** So many minutes before a time of the evening, never before the first day of the plan. */
export const minutesBefore = (at: At, minutes: number): At => {
  const [hours = 0, rest = 0] = at.time.split(':').map(Number)
  const total = Math.max(FIRST_DAY * DAY_MINUTES, at.day * DAY_MINUTES + hours * 60 + rest - minutes)
  const day = Math.floor(total / DAY_MINUTES)
  const left = total - day * DAY_MINUTES
  return { day, time: `${String(Math.floor(left / 60)).padStart(2, '0')}:${String(left % 60).padStart(2, '0')}` }
}

const usually = (minutes: number): Span => spanFromUsual(minutes * 60)
const handsOn = (minutes: number): Way => ({ care: 'hands-on', cooks: 1, takes: usually(minutes), touches: [], uses: [] })
const put = (when: 'in' | 'out', minutes: number): Touch => ({
  when,
  takes: durationOf(minutes * 60),
  lateBy: when === 'in' ? 'PT0S' : 'PT15M',
})
/** Left in the cold from `least` hours on, for as long as it suits. */
const inTheCold = (keep: 'cold' | 'frozen', places: number, least: number, most: number): Way => ({
  care: 'leave',
  cooks: 1,
  takes: { least: durationOf(least * 3600), likely: durationOf(least * 3600), most: durationOf(least * 3600) },
  upTo: durationOf(most * 3600),
  touches: [put('in', 3), put('out', 2)],
  uses: [{ kind: 'cold', keep, places }],
})

/**
 * Chores that most dinners have, in words of our own, with minutes and times that suit this evening: common practice, no
 * source, and all of it to be changed.
 */
export const usualChores = ({ guestsFrom, sitDown, covers }: Asked): readonly Chore[] => {
  const before = (minutes: number) => minutesBefore(guestsFrom, minutes)
  const dayBefore = { day: Math.max(FIRST_DAY, guestsFrom.day - 1), time: '10:00' }
  return [
    {
      does: 'Lay the table',
      where: 'table',
      ways: [handsOn(Math.max(10, 2 * covers))],
      earliest: before(600),
      latest: before(30),
    },
    { does: 'Iron the cloth, fold the napkins', where: 'table', ways: [handsOn(20)], earliest: dayBefore, latest: before(90) },
    { does: 'Put out glasses and jugs', where: 'table', ways: [handsOn(10)], earliest: before(300), latest: before(10) },
    { does: 'Chill the bottles', where: 'kitchen', ways: [inTheCold('cold', 1, 2, 24)], earliest: dayBefore, latest: sitDown },
    { does: 'Freeze ice', where: 'kitchen', ways: [inTheCold('frozen', 1, 5, 30)], earliest: dayBefore, latest: sitDown },
    { does: 'Empty the dishwasher', where: 'kitchen', ways: [handsOn(8)], earliest: before(240), latest: before(15) },
    {
      does: 'Clear the kitchen, take the rubbish out',
      where: 'kitchen',
      ways: [handsOn(15)],
      earliest: before(120),
      latest: guestsFrom,
    },
    { does: 'Make room for coats', where: 'outside', ways: [handsOn(5)], earliest: before(300), latest: guestsFrom },
    { does: 'Get changed', where: 'outside', ways: [handsOn(15)], earliest: before(120), latest: guestsFrom },
    { does: 'Light the candles', where: 'table', ways: [handsOn(2)], earliest: before(15), latest: sitDown },
  ]
}
