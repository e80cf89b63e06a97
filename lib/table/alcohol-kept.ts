/** What is left of alcohol in food, percent, by how long it is baked or simmered after it was stirred in. */
export interface Kept {
  readonly percent: number
  /** The row of the table. */
  readonly row: string
  /** The minutes of the row: no more than the food is heated. */
  readonly minutes: number
}

// USDA Table of Nutrient Retention Factors, release 6 (2007), nutrient 221. Row 5009's code is inferred from its neighbours. What is not
// heated keeps all of it: the table's 70 % is for a night of standing, which nobody here can count on.
const HEATED: readonly Kept[] = [
  { percent: 85, row: '5002', minutes: 0 },
  { percent: 40, row: '5004', minutes: 15 },
  { percent: 35, row: '5005', minutes: 30 },
  { percent: 25, row: '5006', minutes: 60 },
  { percent: 20, row: '5007', minutes: 90 },
  { percent: 10, row: '5008', minutes: 120 },
  { percent: 5, row: '5009', minutes: 150 },
]

/** The row for so many minutes of heat, the next shorter one; null minutes: it is not heated. Never nothing. */
export const alcoholKept = (heatedMinutes: number | null): Kept =>
  heatedMinutes === null
    ? { percent: 100, row: '', minutes: 0 }
    : (HEATED.findLast(({ minutes }) => minutes <= heatedMinutes) ?? { percent: 85, row: '5002', minutes: 0 })
