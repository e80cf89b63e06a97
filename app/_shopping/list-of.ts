import type { Evening } from '#lib/domain/evening.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { headsOf } from '#lib/domain/portions.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { amountsOf, bottleMl, iceGrams, waterMl } from '#lib/drinks/amounts.ts'
import { exact } from '#lib/quantities/exact.ts'
import type { ShoppingList } from '#lib/shopping/line.ts'
import { shoppingList } from '#lib/shopping/list.ts'
import type { Extra } from '#lib/shopping/wanted.ts'
import { wantedOf } from './wanted-of.ts'

/** The evening's shopping, as screen, print, text and table show it. `order`: for the day on which a thing is used. */
export const listOf = (evening: Evening, order: RunningOrder | null, needs: readonly KnownNeed[] | null): ShoppingList =>
  shoppingList(wantedOf(evening, order, needs), extrasOf(evening), evening.shopping ?? [], evening.ticks ?? [])

/** Bottles, water and ice. */
const extrasOf = (evening: Evening): readonly Extra[] => {
  const amounts = new Map(amountsOf(evening).map((amount) => [amount.drink, amount]))
  const byName = new Map<string, Extra>()
  for (const drink of evening.drinks) {
    const ml = amounts.get(drink.id)?.ml ?? 0
    if (ml === 0 || drink.name.trim() === '') continue
    const size = bottleMl(drink.abv)
    const key = `${drink.name.toLowerCase()} ${size}`
    const known = byName.get(key)
    const before = known?.measure.kind === 'volume' ? known.measure.ml : exact('0')
    byName.set(key, {
      kind: 'drink',
      name: known?.name ?? drink.name,
      drinks: [...(known?.drinks ?? []), drink.id],
      measure: { kind: 'volume', ml: before.add(ml) },
      pack: exact(String(size)),
    })
  }
  const ice = iceGrams(headsOf(evening), evening.drinks)
  return [
    ...byName.values(),
    ...(evening.drinks.length > 0 ? [water(headsOf(evening))] : []),
    ...(ice > 0
      ? [
          {
            kind: 'ice' as const,
            name: 'Ice',
            drinks: [],
            measure: { kind: 'mass' as const, grams: exact(String(ice)) },
            pack: null,
          },
        ]
      : []),
  ]
}

const water = (people: number): Extra => ({
  kind: 'water',
  name: 'Water for the table',
  drinks: [],
  measure: { kind: 'volume', ml: exact(String(waterMl(people))) },
  pack: null,
})
