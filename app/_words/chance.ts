import type { RunningOrder } from '#lib/domain/running-order.ts'
import { clockText } from './clock.ts'
import type { Names } from './names.ts'

type Served = RunningOrder['courses'][number]

const EVENINGS = 20

/** "19 evenings in 20": never more than was reckoned. */
export const chanceText = (onTime: number): string => {
  if (onTime >= 0.995) return 'nearly every evening'
  const evenings = Math.floor(onTime * EVENINGS + 1e-9)
  return evenings === 0 ? 'hardly any evening' : `${evenings} ${evenings === 1 ? 'evening' : 'evenings'} in ${EVENINGS}`
}

/** "On time 19 evenings in 20. It hangs on “Roast slowly”." Null when it has not been reckoned. */
export const onTimeText = ({ onTime, decidedBy }: Served, names: Names): string | null => {
  if (onTime === null) return null
  const sure = `On time ${chanceText(onTime)}.`
  return decidedBy === null ? sure : `${sure} It hangs on “${names.stepName(decidedBy)}”.`
}

/** "Can wait until 19:38." Null when it has not been reckoned. */
export const waitFreeText = ({ toTable, waitFreeUntil }: Served, zone: string): string | null => {
  if (waitFreeUntil === null) return null
  if (Date.parse(waitFreeUntil) <= Date.parse(toTable)) return 'Cannot wait.'
  return `Can wait until ${clockText(waitFreeUntil, zone)}.`
}

/** Below this an order that keeps every wish is still called tight. */
const TIGHT = 16 / EVENINGS

/** "Main is on time 13 evenings in 20. It hangs on “Braise”." for the course that is least sure, when that is not sure enough. */
export const tightText = (courses: readonly Served[], names: Names): string | null => {
  const known = courses.flatMap((served) => (served.onTime === null ? [] : [{ ...served, onTime: served.onTime }]))
  const least = known.toSorted((a, b) => a.onTime - b.onTime)[0]
  if (least === undefined || least.onTime >= TIGHT) return null
  const often = `${names.courseName(least.course)} is on time ${chanceText(least.onTime)}.`
  return least.decidedBy === null ? often : `${often} It hangs on “${names.stepName(least.decidedBy)}”.`
}
