import type { Call, CookNow, GuestsNow, OvenNow, Task } from '#lib/night/board.ts'
import { clockText, listText, sentence } from './clock.ts'
import type { Names } from './names.ts'
import { inText, wholeMinutes } from './night-time.ts'
import { verbOf } from './night-verb.ts'
import { shorten } from './shorten.ts'

const small = (text: string): string => `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`

/** A task in a sentence: "turn the potato cake", "take the potatoes out". */
export const taskText = (task: Task, names: Names): string => small(verbOf(task, names).line)

/** "Mira and Tess", "you and Tess", "everybody". */
const whoText = (cooks: readonly string[], own: string | null, names: Names): string => {
  if (cooks.length === 0) return 'everybody'
  const sorted = own !== null && cooks.includes(own) ? [own, ...cooks.filter((cook) => cook !== own)] : cooks
  return listText(sorted.map((cook) => (cook === own ? 'you' : names.cookName(cook))))
}

const callWhat = (call: Call, names: Names): string => {
  const step = call.step === null ? '' : `“${names.stepName(call.step)}”`
  const course = call.course === null ? '' : names.courseName(call.course)
  switch (call.kind) {
    case 'begin':
      return `begin ${step}`
    case 'touch':
      return call.touch === 'out' ? `take it out: ${step}` : `see to it: ${step}`
    case 'look':
      return `look whether it is done: ${step}`
    case 'get-up':
      return step === '' ? 'get up' : `get up for ${step}`
    case 'plate':
      return `plate ${course || step}`
    case 'serve':
      return `${course || step} to table`
    case 'overdue':
      return `overdue: ${step}`
  }
}

/** "Mira and Tess: plate the beetroot". */
export const callText = (call: Call, own: string | null, names: Names): string =>
  `${sentence(whoText(call.cooks, own, names))}: ${callWhat(call, names)}`

/** "at the table, up at 19:53", "turns the potato cake": one of the others, after their name. */
export const cookText = (one: CookNow, names: Names, zone: string): string => {
  if (one.hands) return shorten(taskText(one.hands, names), 48)
  const watched = one.watching[0]
  if (watched) return `keeps an eye: ${shorten(taskText(watched, names), 36)}`
  if (!one.isHere) return one.next ? `not here, wanted at ${clockText(one.next.at, zone)}` : 'not here'
  const place = one.isAtTable ? 'at the table' : 'free'
  return one.next ? `${place}, ${one.isAtTable ? 'up' : 'wanted'} at ${clockText(one.next.at, zone)}` : place
}

/** "195°, goes up 20:12". */
export const ovenText = ({ c, trend, toC, next }: OvenNow, zone: string): string => {
  if (trend === 'off' && !next) return 'off'
  const now =
    trend === 'off' ? 'off' : trend === 'up' ? `${Math.round(c)}°, on its way to ${Math.round(toC)}°` : `${Math.round(c)}°`
  if (!next) return now
  const at = clockText(next.at, zone)
  const coming =
    next.kind === 'off'
      ? `off at ${at}`
      : next.kind === 'up'
        ? trend === 'off'
          ? `on at ${at}, to ${Math.round(next.toC)}°`
          : `up to ${Math.round(next.toC)}° at ${at}`
        : `down to ${Math.round(next.toC)}° at ${at}`
  return `${now}, ${coming}`
}

/** "Lamb shoulder out 20:12, potatoes out 20:27". */
export const insideText = ({ inside }: OvenNow, names: Names, zone: string): string =>
  listText(
    inside.map(
      ({ step, dish, out }) =>
        `${dish === null ? `“${names.stepName(step)}”` : names.dishName(dish)} until ${clockText(out, zone)}`,
    ),
  )

/** "8 at the table, Soup since 19:32, plates off about 19:50". */
export const guestsText = (guests: GuestsNow, nowMs: number, names: Names, zone: string): string => {
  const covers = `${guests.covers} guests`
  switch (guests.kind) {
    case 'to-come':
      return `${covers} from ${clockText(guests.from, zone)}, sit down ${clockText(guests.sitDown, zone)}`
    case 'arriving':
      return `${covers}, sit down ${clockText(guests.sitDown, zone)}, ${inText(wholeMinutes(nowMs, guests.sitDown))}`
    case 'waiting':
      return `${covers} at the table, waiting ${Math.max(0, wholeMinutes(guests.since, nowMs))} min for ${names.courseName(guests.course)}`
    case 'eating':
      return `${covers} at ${names.courseName(guests.course)} since ${clockText(guests.since, zone)}, ${
        guests.isNearlyDone ? 'nearly finished' : `plates off about ${clockText(guests.platesOff, zone)}`
      }${guests.clears === null ? '' : `, by ${names.cookName(guests.clears)}`}`
    case 'done':
      return `${covers}, nothing more to serve`
  }
}
