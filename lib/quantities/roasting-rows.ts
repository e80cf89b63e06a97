import type { Source } from '#lib/domain/source.ts'

const CHART: Source = {
  publisher: 'FoodSafety.gov',
  title: 'Meat and Poultry Roasting Charts',
  year: 2023,
  standing: 'read',
}
const TURKEY: Source = { publisher: 'USDA FSIS', title: 'Turkey roasting times', year: null, standing: 'quoted' }

/** A published row: a weight range in pounds, an oven, and minutes either for each pound or in all. */
export interface RoastRow {
  readonly joint: string
  readonly lb: readonly [number, number]
  readonly ovenF: number
  readonly minutes: readonly [number, number]
  readonly each: 'pound' | 'whole'
  /** Least inside temperature, °F, and the rest that it needs. */
  readonly coreF: number
  readonly restMinutes: number
  readonly source: Source
}

const MEAT = { coreF: 145, restMinutes: 3, source: CHART }
const POULTRY = { coreF: 165, restMinutes: 0, source: CHART }
const perLb = { each: 'pound' } as const
const whole = { each: 'whole' } as const

/** FoodSafety.gov's roasting charts, reviewed 21 September 2023, and USDA's turkey times (unstuffed and stuffed). */
export const ROASTS: readonly RoastRow[] = [
  { joint: 'beef rib, bone-in', lb: [4, 6], ovenF: 325, minutes: [23, 25], ...perLb, ...MEAT },
  { joint: 'beef rib, boneless', lb: [4, 6], ovenF: 325, minutes: [28, 33], ...perLb, ...MEAT },
  { joint: 'beef round or rump', lb: [2.5, 4], ovenF: 325, minutes: [30, 35], ...perLb, ...MEAT },
  { joint: 'beef tenderloin', lb: [4, 6], ovenF: 425, minutes: [45, 60], ...whole, ...MEAT },
  { joint: 'lamb leg, bone-in', lb: [5, 7], ovenF: 325, minutes: [20, 25], ...perLb, ...MEAT },
  { joint: 'lamb leg, bone-in', lb: [7, 9], ovenF: 325, minutes: [10, 15], ...perLb, ...MEAT },
  { joint: 'lamb leg, boneless', lb: [4, 7], ovenF: 325, minutes: [25, 30], ...perLb, ...MEAT },
  { joint: 'lamb shoulder', lb: [3, 4], ovenF: 325, minutes: [30, 35], ...perLb, ...MEAT },
  { joint: 'pork loin', lb: [2, 5], ovenF: 350, minutes: [20, 20], ...perLb, ...MEAT },
  { joint: 'pork crown', lb: [10, 10], ovenF: 350, minutes: [12, 12], ...perLb, ...MEAT },
  { joint: 'pork tenderloin', lb: [0.5, 1.5], ovenF: 425, minutes: [20, 27], ...whole, ...MEAT },
  { joint: 'pork shoulder (butt)', lb: [3, 6], ovenF: 350, minutes: [45, 45], ...perLb, ...MEAT },
  { joint: 'pork ribs', lb: [2, 4], ovenF: 350, minutes: [90, 120], ...whole, ...MEAT },
  { joint: 'veal rib', lb: [4, 5], ovenF: 325, minutes: [25, 27], ...perLb, ...MEAT },
  { joint: 'veal loin', lb: [3, 4], ovenF: 325, minutes: [34, 36], ...perLb, ...MEAT },
  { joint: 'chicken', lb: [3, 4], ovenF: 350, minutes: [75, 90], ...whole, ...POULTRY },
  { joint: 'chicken', lb: [5, 7], ovenF: 350, minutes: [120, 135], ...whole, ...POULTRY },
  { joint: 'capon', lb: [4, 8], ovenF: 350, minutes: [120, 180], ...whole, ...POULTRY },
  { joint: 'duck', lb: [4, 6], ovenF: 350, minutes: [30, 35], ...perLb, ...POULTRY },
  { joint: 'goose', lb: [8, 12], ovenF: 325, minutes: [150, 180], ...whole, ...POULTRY },
  ...(
    [
      [8, 12, 165, 180, 180, 210],
      [12, 14, 180, 225, 210, 240],
      [14, 18, 225, 255, 240, 255],
      [18, 20, 255, 270, 255, 285],
      [20, 24, 270, 300, 285, 315],
    ] as const
  ).flatMap(([low, high, least, most, stuffedLeast, stuffedMost]): RoastRow[] => [
    { joint: 'turkey', lb: [low, high], ovenF: 325, minutes: [least, most], ...whole, ...POULTRY, source: TURKEY },
    {
      joint: 'turkey, stuffed',
      lb: [low, high],
      ovenF: 325,
      minutes: [stuffedLeast, stuffedMost],
      ...whole,
      ...POULTRY,
      source: TURKEY,
    },
  ]),
]
