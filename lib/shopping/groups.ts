import { AISLES } from './aisles.ts'
import type { Aisle, Line } from './line.ts'

/** Lines that stand together in a shop. */
export interface AisleGroup {
  readonly aisle: Aisle
  readonly lines: readonly Line[]
}
/** One errand: a shop, null where any shop has it. */
export interface ShopGroup {
  readonly shop: string | null
  readonly aisles: readonly AisleGroup[]
}

const rank = (aisle: Aisle): number => (aisle.kind === 'named' ? -1 : AISLES.indexOf(aisle.kind))
const nameOf = (aisle: Aisle): string => (aisle.kind === 'named' ? `named ${aisle.name.toLowerCase()}` : aisle.kind)
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** By shop, those that are named first, then along the aisles; in an aisle by name. Ticked lines keep their place. */
export const groupLines = (lines: readonly Line[]): readonly ShopGroup[] => {
  const shops = [...new Set(lines.map(({ shop }) => shop))].toSorted((a, b) => (a === null ? 1 : b === null ? -1 : byText(a, b)))
  return shops.map((shop) => {
    const here = lines.filter((line) => line.shop === shop)
    const aisles = [...new Map(here.map(({ aisle }) => [nameOf(aisle), aisle])).entries()].toSorted(
      ([a, one], [b, two]) => rank(one) - rank(two) || byText(a, b),
    )
    return {
      shop,
      aisles: aisles.map(([name, aisle]) => ({
        aisle,
        lines: here
          .filter((line) => nameOf(line.aisle) === name)
          .toSorted((a, b) => byText(a.food.toLowerCase(), b.food.toLowerCase()) || byText(a.key, b.key)),
      })),
    }
  })
}

/** What a line is in when one goes shopping on a day: the fresh things of that day, and whatever may be bought on it. */
export const isFor = (line: Line, day: number): boolean => {
  const { when } = line
  if (when.kind === 'on') return when.day === day
  return (when.by === null || day <= when.by) && (when.kind === 'any' || day >= when.day)
}

/** What has been typed of prices: their sum in hundredths, and how many lines that are bought have none. */
export const priced = (lines: readonly Line[]): { readonly total: number; readonly without: number } => {
  const bought = lines.filter(({ standing }) => standing.kind !== 'have')
  return {
    total: bought.reduce((sum, { price }) => sum + (price ?? 0), 0),
    without: bought.filter(({ price }) => price === null).length,
  }
}
