import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { guestsNow, nextCourse } from './courses-now.ts'
import { momentOf } from './moment.ts'
import { MINUTE } from './told.ts'

/** Something that a guest could do: no knives, no heat, and nothing of a plate that is kept apart. `at`: when it is due, in ms. */
export type Job =
  /** A chore of the house. */
  | { readonly kind: 'chore'; readonly step: string; readonly at: number }
  | { readonly kind: 'pour'; readonly course: string; readonly at: number }
  | { readonly kind: 'clear'; readonly course: string; readonly at: number }
  /** Cold plates or bowls from the kitchen to the table. */
  | { readonly kind: 'carry'; readonly course: string; readonly at: number }
  /** Everybody to their chairs. */
  | { readonly kind: 'seat'; readonly at: number }

/** Glasses are filled before the plates come; common practice, no source. */
const POURING = 3 * MINUTE

/** What is due within this is of use now. */
const SOON = 30 * MINUTE

/** A word of these, or kit of these, keeps a chore with the cooks; what is not known to be harmless is not offered, so only chores are. */
const SHARP_OR_HOT =
  /\b(?:knife|knives|cut|slic|chop|carv|peel|dic|trim|score|grat|shav|mandolin|open (?:the )?(?:wine|bottle)|corkscrew|scissors|oven|hob|stove|ring|burner|boil|hot|heat|fry|roast|bak|grill|candle|light|match|flame|fire|kettle|iron)/i
const HARMLESS_TOOL = /^(?:sink|dishwasher|table|tray|trolley|coffee pot|jug|cloth)$/i

const isHarmless = ({ dish, guard, does, ways }: Step, way: number): boolean =>
  dish === null &&
  guard === undefined &&
  !SHARP_OR_HOT.test(does) &&
  (ways[way]?.uses ?? []).every(
    (use) => use.kind === 'worktop' || use.kind === 'cold' || (use.kind === 'tool' && HARMLESS_TOOL.test(use.tool)),
  )

/** What a guest who asks could do now or soon, the first due first. */
export const jobsOf = (evening: Evening, order: RunningOrder, nowMs: number): readonly Job[] => {
  const moment = momentOf(evening, order, nowMs)
  const chores = moment.works
    .filter(({ step, cue, isBegun, start }) => !isBegun && start <= nowMs + SOON && isHarmless(step, cue.way))
    .map(({ step, start }): Job => ({ kind: 'chore', step: step.id, at: start }))
  const guests = guestsNow(moment)
  const next = nextCourse(moment)
  const isNear = next !== null && next.toTable <= nowMs + SOON
  const dishes = evening.dishes.filter(({ course, state }) => state === 'on' && course === next?.course)
  const isCold = dishes.length > 0 && dishes.every(({ keeps }) => keeps.how === 'cold' || keeps.how === 'room')
  const hasGuard = evening.steps.some(({ dish, guard }) => guard !== undefined && dishes.some(({ id }) => id === dish))
  const platesOff = guests.kind === 'eating' ? guests.platesOff : 0
  const drinks = evening.drinks.some(({ course }) => course === next?.course)
  return [
    ...chores,
    ...(guests.kind === 'eating' && guests.platesOff <= nowMs + SOON
      ? [{ kind: 'clear' as const, course: guests.course, at: guests.platesOff }]
      : []),
    ...(next && isNear && drinks
      ? [{ kind: 'pour' as const, course: next.course, at: Math.max(next.toTable - POURING, platesOff) }]
      : []),
    ...(next && isNear && isCold && !hasGuard ? [{ kind: 'carry' as const, course: next.course, at: next.toTable }] : []),
    ...(guests.kind === 'arriving' && guests.sitDown <= nowMs + SOON
      ? [{ kind: 'seat' as const, at: guests.sitDown - 5 * MINUTE }]
      : []),
  ].sort((a, b) => a.at - b.at)
}
