import * as z from 'zod/mini'

/** How much of a dish was left when all had eaten; short: there was too little. */
export const Left = z.enum(['short', 'none', 'quarter', 'half'])
export type Left = z.infer<typeof Left>

/** The share of what was made that was wanted; short: common practice has it a tenth more, no source. */
const WANTED: Readonly<Record<Left, number>> = { short: 1.1, none: 1, quarter: 0.75, half: 0.5 }

interface Served {
  readonly made: number
  readonly covers: number
  readonly left: Left
}

/** How many portions to make next time for as many covers, from the nights on which it was said, beside one night that went as planned. */
export const portionsNext = (covers: number, nights: readonly Served[]): number => {
  const each = nights.filter((night) => night.covers > 0).map(({ made, covers: of, left }) => (made * WANTED[left]) / of)
  const mean = (1 + each.reduce((sum, share) => sum + share, 0)) / (1 + each.length)
  return Math.max(1, Math.round(covers * mean))
}
