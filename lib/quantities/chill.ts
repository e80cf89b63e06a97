import { CHILL_RATES, type ChillShape, coolingTime, NEWTON } from '#lib/domain/newton.ts'
import { PRACTICE } from '#lib/domain/source.ts'
import { type Estimate, estimate } from './estimate.ts'

/** Minutes to chill to `toC` in a refrigerator (4 °C unless told); null when it never gets there. Says nothing about safety. */
export const chillMinutes = (shape: ChillShape, fromC: number, toC: number, fridgeC = 4): Estimate | null => {
  const [slow, fast] = CHILL_RATES[shape]
  const usual = (slow + fast) / 2
  const minutes = [fast, usual, slow].map((rate) => coolingTime(fromC, toC, fridgeC, rate / 60))
  const [least, likely, most] = minutes
  if (least == null || likely == null || most == null) return null
  return estimate({ least, likely, most }, { shape, fromC, toC, fridgeC, ratePerHour: usual }, [NEWTON, PRACTICE])
}
