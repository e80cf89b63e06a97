import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { clockText, countOf, dateText, listText } from './clock.ts'
import type { Names } from './names.ts'

/** A step, or a batch of it, that is elsewhere in the other order; null: it is not in that order at all. */
export interface Move {
  readonly before: Cue | null
  readonly after: Cue | null
}

const MINUTE_MS = 60_000
const keyOf = (cue: Cue): string => `${cue.step} ${cue.batch}`
const whoOf = (cue: Cue): readonly string[] => [...new Set([...cue.cooks, ...cue.touches.map(({ cook }) => cook)])]
const kitOf = (cue: Cue): readonly string[] => [...new Set(cue.kit.map(({ id }) => id))].toSorted()
const same = (a: readonly string[], b: readonly string[]): boolean => a.toSorted().join(' ') === b.toSorted().join(' ')

const isElsewhere = (before: Cue, after: Cue): boolean =>
  Math.abs(Date.parse(before.start) - Date.parse(after.start)) >= MINUTE_MS ||
  Math.abs(Date.parse(before.end) - Date.parse(after.end)) >= MINUTE_MS ||
  before.way !== after.way ||
  !same(whoOf(before), whoOf(after)) ||
  !same(kitOf(before), kitOf(after))

/** What is elsewhere, for a minute or more, with another cook, in another way or on other kit; in the order of the clock. */
export const movesBetween = (before: RunningOrder, after: RunningOrder): readonly Move[] => {
  const was = new Map(before.cues.map((cue) => [keyOf(cue), cue]))
  const is = new Map(after.cues.map((cue) => [keyOf(cue), cue]))
  const gone = before.cues.filter((cue) => !is.has(keyOf(cue))).map((cue): Move => ({ before: cue, after: null }))
  const elsewhere = after.cues.flatMap((cue): Move[] => {
    const old = was.get(keyOf(cue)) ?? null
    return old !== null && !isElsewhere(old, cue) ? [] : [{ before: old, after: cue }]
  })
  const begins = ({ before: old, after: now }: Move) => Date.parse((now ?? old)?.start ?? '')
  return [...gone, ...elsewhere].toSorted((a, b) => begins(a) - begins(b))
}

/** "“Potatoes in” at 19:10 instead of 19:22, by Piet instead of Jonas." */
export const moveText = ({ before, after }: Move, names: Names, zone: string): string => {
  const cue = after ?? before
  if (cue === null) return ''
  const name = `“${names.stepName(cue.step)}”${cue.batch > 0 ? ` (${cue.batch + 1})` : ''}`
  const days = before && after && dateText(before.start, zone) !== dateText(after.start, zone)
  const at = ({ start }: Cue) => `${clockText(start, zone)}${days ? ` on ${dateText(start, zone)}` : ''}`
  const who = (of: Cue) => listText(whoOf(of).map(names.cookName)) || 'nobody'
  if (after === null) return `${name} is left out.`
  if (before === null) return `${name} comes in at ${at(after)}.`
  const parts = [
    at(before) === at(after) ? `at ${at(after)} as before` : `at ${at(after)} instead of ${at(before)}`,
    same(whoOf(before), whoOf(after)) ? '' : `by ${who(after)} instead of ${who(before)}`,
    before.way === after.way ? '' : `the ${['first', 'second', 'third'][after.way] ?? 'other'} way`,
    same(kitOf(before), kitOf(after)) || kitOf(after).length === 0 ? '' : `on ${listText(kitOf(after).map(names.kitName))}`,
  ]
  return `${name} ${parts.filter(Boolean).join(', ')}.`
}

/** "2 steps move." Null when none does. */
export const movesText = (moves: readonly Move[]): string | null =>
  moves.length === 0
    ? null
    : `${countOf(moves.length, 'step moves', 'steps move').replace(/^./, (letter) => letter.toUpperCase())}.`
