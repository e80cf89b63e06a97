import type { Ingredient } from '#lib/domain/ingredient.ts'
import { type Measures, nameUnit, ownerIn, unitText } from '#lib/domain/unit-words.ts'
import { readUnit } from '#lib/quantities/units.ts'

/**
 * The amount of an ingredient whose measure is nobody's, as that of these measures; as it is where they do not say (an Australian
 * pint) or with null. Null for every other ingredient.
 */
export const ownedBy = ({ amount }: Pick<Ingredient, 'amount'>, measures: Measures | null): Ingredient['amount'] => {
  const named = amount && nameUnit(amount.unit)
  if (!amount || !named || readUnit(amount.unit, null).kind !== 'which') return null
  const owner = measures && ownerIn(measures, named.word)
  return owner ? { ...amount, unit: unitText({ word: named.word, owner }) } : amount
}
