import { serviceWords } from '#app/_words/care.ts'
import { atText, countOf } from '#app/_words/clock.ts'
import { durationText } from '#app/_words/duration.ts'
import type { At, Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Course } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

/** How a course goes, folded: "Plated, eaten in 25 min, at most 15 min after the one before." */
export const courseText = (course: Course, date: string): string =>
  [
    course.children
      ? `${countOf(course.children.covers, 'child', 'children')} at ${course.children.at.time}, before everybody`
      : course.welcome
        ? 'A welcome before sit-down'
        : '',
    serviceWords[course.service],
    `eaten in ${durationText(course.eating.likely)}`,
    course.notBefore ? `not before ${atText(date, course.notBefore)}` : `waited for ${durationText(course.wait.most)} at most`,
  ]
    .filter(Boolean)
    .join(', ')
    .replace(/^./, (first) => first.toUpperCase())

/** A first word of the children's own sitting: two of them, an hour before the guests come, as far as that is the same day. */
export const childrenOf = ({ guestsFrom }: { readonly guestsFrom: At }): NonNullable<Course['children']> => {
  const [hour = 18, minute = 0] = guestsFrom.time.split(':').map(Number)
  const time = hour >= 1 ? `${String(hour - 1).padStart(2, '0')}:${String(minute).padStart(2, '0')}` : guestsFrom.time
  return { at: { ...guestsFrom, time }, covers: 2 }
}

const isSame = (a: Span, b: Span): boolean => secondsOf(a.least) === secondsOf(b.least) && secondsOf(a.most) === secondsOf(b.most)

/** The eating span with another usual length: least and most are suggested anew where they were only suggested, else widened to hold it. */
export const eatenIn = (eating: Span, likely: string): Span => {
  const usual = secondsOf(likely)
  if (isSame(eating, spanFromUsual(secondsOf(eating.likely)))) return spanFromUsual(usual)
  return {
    least: usual < secondsOf(eating.least) ? likely : eating.least,
    likely,
    most: usual > secondsOf(eating.most) ? likely : eating.most,
  }
}

/** The moment of the evening that a clock time is meant to be: small hours, for a dinner, are those of the next day. */
export const momentOf = (time: string, sitDown: At): At => ({
  day: sitDown.day === 0 && sitDown.time >= '12:00' && time < '06:00' ? 1 : sitDown.day,
  time,
})

/** A moment as it would be typed: the clock alone where `momentOf` gives it back, else with its day. */
export const notBeforeText = (at: At, { date, sitDown }: { readonly date: string; readonly sitDown: At }): string =>
  momentOf(at.time, sitDown).day === at.day ? at.time : atText(date, at)
