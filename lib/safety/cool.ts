import { CHILL_RATES, type ChillShape, coolingTime } from '#lib/domain/newton.ts'
import { COOLING } from './rules.ts'

const FRIDGE_C = 4

/** Minutes in a fridge of 4 °C from so hot down to so cold, at the slow end of what is usual for the shape: an estimate, to be measured. */
export const fridgeMinutes = (shape: ChillShape, fromC: number, toC: number): number | null => {
  const hours = coolingTime(fromC, toC, FRIDGE_C, CHILL_RATES[shape][0])
  return hours === null ? null : hours * 60
}

/** Whether food that cools by Newton's law, so many degrees an hour's share, keeps both stages of cooling in a place of `aroundC`. */
export const keepsStages = (rateAnHour: number, aroundC: number): boolean => {
  const first = coolingTime(COOLING.fromC, COOLING.first.toC, aroundC, rateAnHour)
  const all = coolingTime(COOLING.fromC, COOLING.all.toC, aroundC, rateAnHour)
  return first !== null && all !== null && first * 60 <= COOLING.first.minutes + 1e-9 && all * 60 <= COOLING.all.minutes + 1e-9
}
