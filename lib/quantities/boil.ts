import type { Source } from '#lib/domain/source.ts'
import { type Estimate, estimate } from './estimate.ts'

/** Mean specific heat of water, kJ/(kg K), the 15 °C calorie. */
export const WATER_HEAT = 4.186

export type Hob = 'induction' | 'ceramic' | 'gas'

interface HobFigures {
  readonly kW: number
  /** Part of the power that reaches the water: low, usual, high. */
  readonly reaches: readonly [low: number, usual: number, high: number]
}

const DOE: Source = {
  publisher: 'US Department of Energy',
  title: 'Technical support document, residential cooking products',
  year: 2009,
  ref: '74 FR 16040',
  standing: 'quoted',
}
const PHYSICS: Source = { publisher: 'physics', title: 'Q = m c ΔT, c = 4.186 kJ/(kg K)', year: null, standing: 'memory' }

// The usual figures are DOE's, the spread around them is what other published figures differ by (ENERGY STAR: gas 0.32).
const HOBS: Readonly<Record<Hob, HobFigures>> = {
  induction: { kW: 2, reaches: [0.77, 0.84, 0.9] },
  ceramic: { kW: 1.8, reaches: [0.7, 0.74, 0.78] },
  gas: { kW: 2.6, reaches: [0.32, 0.4, 0.44] },
}

/** Seconds to heat water: mass × 4.186 × ΔT ÷ (power × the part of it that arrives). */
export const heatSeconds = (litres: number, fromC: number, toC: number, kW: number, reaches: number): number =>
  (litres * WATER_HEAT * (toC - fromC)) / (kW * reaches)

export interface Water {
  readonly litres: number
  readonly hob: Hob
  /** From the tap unless told: 15 °C. */
  readonly fromC?: number
  /** The ring's power; a usual one for the hob unless told. */
  readonly kW?: number
  /** 100 at sea level; about 1 °C less for each 300 m. */
  readonly boilsAtC?: number
}

/** Minutes for water to come to the boil in a covered pan. Throws when there is no water or no power. */
export const boilMinutes = (water: Water): Estimate => {
  const hob = HOBS[water.hob]
  const { litres, fromC = 15, kW = hob.kW, boilsAtC = 100 } = water
  if (!(litres > 0 && kW > 0 && boilsAtC > fromC)) throw new RangeError('no water, no power or no warming')
  const [low, usual, high] = hob.reaches
  const minutes = (reaches: number) => heatSeconds(litres, fromC, boilsAtC, kW, reaches) / 60
  return estimate(
    { least: minutes(high), likely: minutes(usual), most: minutes(low) },
    { litres, fromC, boilsAtC, powerKW: kW, reaches: usual },
    [DOE, PHYSICS],
  )
}
