import type { Span } from '#lib/domain/atoms.ts'
import { ON_THE_ROAD } from '#lib/domain/bring-cold.ts'
import type { Course, KeepHow } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

const MINUTE = 60

/** A dish from the fridge, heated through in the oven or a pan; a big one takes longer. Common practice, no source: to be corrected. */
export const usualHeat = (portions: number): Span => spanFromUsual((portions > 6 ? 35 : 25) * MINUTE)

/** Dressing, slicing, putting together. Common practice, no source. */
export const USUAL_FINISH: Span = spanFromUsual(10 * MINUTE)

/** A gentle oven for food that is heated again; common practice, no source. */
export const GENTLE_OVEN = { lowC: 150, highC: 180 } as const

/** Onto plates, or in its bowl to the table. Common practice, no source. */
export const usualPlate = (service: Course['service']): Span =>
  service === 'plated' ? { least: 'PT3M', likely: 'PT4M', most: 'PT6M' } : { least: 'PT1M', likely: 'PT2M', most: 'PT3M' }

/** Washed, dried and put with its owner's coat. Common practice, no source. */
export const GIVE_BACK: Span = { least: 'PT2M', likely: 'PT3M', most: 'PT5M' }

/**
 * How long it may be on the way where no box says more. Warm food: USDA FSIS, two hours out of the heat, and cold food within them; a hot
 * dish wrapped in a cloth stays hot for half an hour (common practice, no source). At room temperature it is a wish.
 */
export const CARRY_LIMIT: Readonly<Record<KeepHow, { readonly most: string; readonly kind: 'quality' | 'safety' }>> = {
  hot: { most: 'PT30M', kind: 'safety' },
  warm: { most: 'PT2H', kind: 'safety' },
  room: { most: 'PT4H', kind: 'quality' },
  cold: { most: ON_THE_ROAD, kind: 'safety' },
  frozen: { most: 'PT1H', kind: 'quality' },
}

/** How long a finished dish waits for the table, as for any other dish. Common practice, no source. */
export const KEEPS: Readonly<Record<KeepHow, string>> = {
  hot: 'PT10M',
  warm: 'PT20M',
  room: 'PT30M',
  cold: 'PT30M',
  frozen: 'PT5M',
}
