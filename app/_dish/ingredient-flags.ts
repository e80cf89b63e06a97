import { sensibleText } from '#app/_words/amount.ts'
import { checkedTags } from '#app/_words/food.ts'
import { boughtText, coversText, fillsText, scaleNoteText } from '#app/_words/quantity.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { ForCovers } from '#lib/quantities/for-covers.ts'

export interface Flag {
  readonly text: string
  /** Somebody has to look at it. */
  readonly isAmiss: boolean
}

/** What one has to know of an ingredient before it is opened, in a few words each. */
export const flagsOf = (ingredient: Ingredient, quantity: ForCovers): readonly Flag[] => {
  const { exactly } = coversText(quantity)
  const unit = quantity.amount?.unit ?? ''
  const flag = (text: string, isAmiss = false): Flag => ({ text, isAmiss })
  return [
    // Whose scale shows other units measures by the cup, where a source says what a cup weighs.
    ...(quantity.asRead
      ? [flag(quantity.fills.length > 0 ? fillsText(quantity.fills) : `about ${sensibleText(quantity.asRead, null, '')}`)]
      : []),
    ...(exactly ? [flag(exactly)] : []),
    ...quantity.notes.map((note) => flag(scaleNoteText(note, unit))),
    ...(quantity.whose.length > 0 ? [flag(`whose ${unit}?`, true)] : []),
    ...(quantity.buys ? [flag(boughtText(quantity.buys))] : []),
    ...(checkedTags[ingredient.checked] ? [flag(checkedTags[ingredient.checked], ingredient.checked === 'unknown')] : []),
  ]
}
