import { celsiusOf } from '#lib/domain/oven-marks.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { PRACTICE, type Source } from '#lib/domain/source.ts'
import { type Estimate, estimate } from './estimate.ts'
import { ROASTS, type RoastRow } from './roasting-rows.ts'

const KG_PER_LB = 0.45359237

/** The joints that the charts know. */
export const JOINTS: readonly string[] = [...new Set(ROASTS.map((row) => row.joint))]

export type NoRoast =
  | { readonly kind: 'unknown-joint' }
  /** The chart has this joint, but no row for this weight; its rows, in kilograms. */
  | { readonly kind: 'weight-outside'; readonly rows: readonly (readonly [fromKg: number, toKg: number])[] }

export interface Roast extends Estimate {
  readonly ovenC: number
  /** Inside, before it may be eaten; the thermometer decides, not the clock. */
  readonly coreC: number
  readonly restMinutes: number
}

const minutesOf = (row: RoastRow, kg: number): readonly [number, number] => {
  const times = row.each === 'pound' ? kg / KG_PER_LB : 1
  return [row.minutes[0] * times, row.minutes[1] * times]
}

/**
 * Roasting minutes from the published charts, for a weight that one of their rows covers; where two rows meet (7 lb of lamb leg)
 * both count. Outside them it is refused, never stretched.
 */
export const roastMinutes = (joint: string, kg: number): Result<Roast, NoRoast> => {
  const rows = ROASTS.filter((row) => row.joint === joint)
  if (rows.length === 0) return fail({ kind: 'unknown-joint' })
  const lb = kg / KG_PER_LB
  const fit = rows.filter((row) => row.lb[0] - 1e-6 <= lb && lb <= row.lb[1] + 1e-6)
  const [row] = fit
  if (!row) return fail({ kind: 'weight-outside', rows: rows.map((each) => [each.lb[0] * KG_PER_LB, each.lb[1] * KG_PER_LB]) })
  const times = fit.flatMap((each) => minutesOf(each, kg))
  const [least, most] = [Math.min(...times), Math.max(...times)]
  return ok({
    ...estimate({ least, likely: (least + most) / 2, most }, { joint, kg }, [row.source]),
    ovenC: celsiusOf(row.ovenF),
    coreC: celsiusOf(row.coreF),
    restMinutes: row.restMinutes,
  })
}

/** A British rule of thumb: so many minutes for each 450 g, or kilogram, and so many more. */
export interface RoastRule {
  readonly joint: string
  readonly perKg: number
  readonly plus: number
  readonly ovenC: number
  readonly source: Source
}

const MAKERS: Source = {
  publisher: 'an oven maker',
  title: 'guide to roasting, minutes for each 450 g',
  year: null,
  standing: 'quoted',
}
const per450 = (joint: string, each: number, plus: number): RoastRule => ({
  joint,
  perKg: each / 0.45,
  plus,
  ovenC: 200,
  source: MAKERS,
})

export const ROAST_RULES: readonly RoastRule[] = [
  { joint: 'chicken', perKg: 45, plus: 20, ovenC: 190, source: PRACTICE },
  per450('chicken, by 450 g', 20, 20),
  per450('beef, rare', 20, 20),
  per450('beef, medium', 25, 20),
  per450('beef, well done', 30, 30),
  per450('lamb, medium', 25, 25),
  per450('lamb, well done', 30, 30),
  per450('pork', 35, 35),
]

/** Minutes by a rule of thumb, ten per cent to either side. */
export const roastByRule = (rule: RoastRule, kg: number): Estimate => {
  if (!(kg > 0)) throw new RangeError('no joint')
  const likely = rule.perKg * kg + rule.plus
  return estimate({ least: likely * 0.9, likely, most: likely * 1.1 }, { joint: rule.joint, kg, ovenC: rule.ovenC }, [
    rule.source,
  ])
}
