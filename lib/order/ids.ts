/** The activity of a step, or of one of its batches, numbered from 0. */
export const activityId = (step: string, batch: number, batches: number): string => (batches === 1 ? step : `${step}#${batch}`)

/** Which comes first of two ids: by code units, the same on every machine. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
