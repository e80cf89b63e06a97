import { CHILL_RATES, type ChillShape, coolingTime } from '#lib/domain/newton.ts'
import type { InTime } from './finding.ts'
import { COOLING } from './rules.ts'

const FRIDGE_C = 4

/** Whether food that cools by Newton's law at that rate an hour keeps both stages of cooling in a place of `aroundC`. */
export const keepsStages = (rateAnHour: number, aroundC: number): boolean => {
  const first = coolingTime(COOLING.fromC, COOLING.first.toC, aroundC, rateAnHour)
  const all = coolingTime(COOLING.fromC, COOLING.all.toC, aroundC, rateAnHour)
  return first !== null && all !== null && first * 60 <= COOLING.first.minutes + 1e-9 && all * 60 <= COOLING.all.minutes + 1e-9
}

/** As `keepsStages`, of a shape in a fridge of 4 °C, at the slow and the fast end of what is usual for it: to be measured all the same. */
export const coolsInTime = (shape: ChillShape): InTime => {
  const [slow, fast] = CHILL_RATES[shape]
  if (keepsStages(slow, FRIDGE_C)) return 'yes'
  return keepsStages(fast, FRIDGE_C) ? 'perhaps' : 'no'
}
