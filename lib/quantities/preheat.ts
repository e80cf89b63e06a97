import { PRACTICE } from '#lib/domain/source.ts'
import { type Estimate, estimate } from './estimate.ts'

export type OvenSort = 'electric' | 'fan' | 'gas' | 'grill'

const USUAL: Readonly<Record<OvenSort, readonly [number, number]>> = {
  electric: [10, 15],
  fan: [8, 12],
  gas: [10, 20],
  grill: [5, 5],
}
const HOT_C = 225

/** Minutes from cold to hot: the oven's own slope where it is known (°C/min, from 20 °C), else what is usual for its sort. */
export const preheatMinutes = (toC: number, oven: { readonly upPerMin: number } | OvenSort): Estimate => {
  if (!(toC > 20)) throw new RangeError('an oven is hotter than the room')
  if (typeof oven === 'object') {
    const likely = (toC - 20) / oven.upPerMin
    return estimate({ least: likely * 0.85, likely, most: likely * 1.25 }, { fromC: 20, toC, upPerMin: oven.upPerMin }, [
      PRACTICE,
    ])
  }
  const [least, most] = toC >= HOT_C && oven !== 'grill' ? [20, 25] : USUAL[oven]
  return estimate({ least, likely: (least + most) / 2, most }, { toC, oven }, [PRACTICE])
}
