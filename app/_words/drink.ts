import type { Drink } from '#lib/domain/people.ts'

/** Centilitres for each person: "10 cl"; empty for none. */
export const amountText = (ml: number): string => (ml === 0 ? '' : `${Math.round(ml) / 10}\u00a0cl`)

/** "Dry cider, 10 cl", and below it "with alcohol, 5%, at 8°". */
export const drinkText = (drink: Drink): { readonly name: string; readonly about: string } => {
  const amount = amountText(drink.mlEach)
  const kind =
    drink.role === 'with' ? `with alcohol, ${drink.abv}%` : drink.abv > 0 ? `without, but for ${drink.abv}%` : 'without'
  return {
    name: amount ? `${drink.name}, ${amount}` : drink.name,
    about: drink.servedC === undefined ? kind : `${kind}, at ${drink.servedC}°`,
  }
}

/** The number in a text such as "10 cl", "12,5 %" or "8°"; null when there is none or more than one. */
export const readNumber = (text: string): number | null => {
  const found = /^\s*(-?\d{1,4}(?:[.,]\d{1,2})?)\s*[^\d.,-]*$/.exec(text)
  return found ? Number((found[1] ?? '').replace(',', '.')) : null
}
