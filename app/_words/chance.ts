import type { RunningOrder, Suffers } from '#lib/domain/running-order.ts'
import { clockText } from './clock.ts'
import type { Names } from './names.ts'
import { shorten } from './shorten.ts'

type Served = RunningOrder['courses'][number]

const EVENINGS = 20

/** "19 evenings in 20": never more than was reckoned. */
export const chanceText = (onTime: number): string => {
  if (onTime >= 0.995) return 'nearly every evening'
  const evenings = Math.floor(onTime * EVENINGS + 1e-9)
  return evenings === 0 ? 'hardly any evening' : `${evenings} ${evenings === 1 ? 'evening' : 'evenings'} in ${EVENINGS}`
}

const suffersText = (one: Suffers, names: Names): string => {
  switch (one.kind) {
    case 'dish':
      return `${shorten(names.dishName(one.dish), 32)} suffers`
    case 'step':
      return `“${names.stepName(one.step)}” is out of time`
    case 'cook':
      return `${names.cookName(one.cook)} has to go`
  }
}

/** Nobody reckons with a wait of more than four hours: that nothing else gives by then is no news. */
const FAR = 4 * 3_600_000

/** "; then Potato cake suffers, and more from 19:50", "; then Kim has to go": what gives first beyond the free wait. */
const beyondText = ({ toTable, waitBeyond }: Served, names: Names, zone: string): string => {
  const [first] = waitBeyond?.suffers ?? []
  if (!waitBeyond || !first) return ''
  const { until } = waitBeyond
  const isNear = until !== null && Date.parse(until) - Date.parse(toTable) < FAR
  return `; then ${suffersText(first, names)}${isNear ? `, and more from ${clockText(until, zone)}` : ''}`
}

/**
 * "Can wait until 19:38; then Potato cake suffers, and more from 19:50." "Cannot wait: Kim has to go." Null when it has not
 * been reckoned.
 */
export const waitFreeText = (served: Served, names: Names, zone: string): string | null => {
  const { toTable, waitFreeUntil } = served
  if (waitFreeUntil === null) return null
  const free = Date.parse(waitFreeUntil) > Date.parse(toTable)
  const beyond = beyondText(served, names, zone)
  return free ? `Can wait until ${clockText(waitFreeUntil, zone)}${beyond}.` : `Cannot wait${beyond.replace('; then', ':')}.`
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
