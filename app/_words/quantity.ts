import type { FoodNature } from '#lib/domain/food-nature.ts'
import { unitText } from '#lib/domain/unit-words.ts'
import { exact } from '#lib/quantities/exact.ts'
import type { ForCovers } from '#lib/quantities/for-covers.ts'
import type { ScaleNote } from '#lib/quantities/scale.ts'
import { sensible } from '#lib/quantities/sensible.ts'
import { UNITS } from '#lib/quantities/units.ts'
import type { Weighed } from '#lib/quantities/weigh.ts'
import { amountText, numberText, sensibleText, shareText } from './amount.ts'

export const natureWords: Readonly<Record<FoodNature, string>> = {
  salt: 'salt',
  spice: 'spice',
  leavening: 'what makes it rise',
  thickener: 'what thickens it',
  egg: 'egg',
}

/** What is to be known about an amount that was scaled, with its consequence. */
export const scaleNoteText = (note: ScaleNote, unit: string): string => {
  switch (note.kind) {
    case 'rounded': {
      const share = exact(note.share).sub(1).valueOf()
      return `${numberText(note.wanted, unit)} → ${numberText(note.given, unit)}, ${shareText(share) || 'hardly a difference'}`
    }
    case 'by-taste': {
      const what = note.nature === null ? 'as written' : `as written: ${natureWords[note.nature]} seldom grows in proportion`
      return `${what}; in proportion it would be ${amountText({ n: note.linear, unit })}. Taste`
    }
    case 'look-twice':
      return `in proportion; ${natureWords[note.nature]} seldom grows like that, so look twice`
    case 'kept':
      return 'the same for any number'
    case 'approximate':
      return `very nearly; exactly ${note.exactly}`
  }
}

const GRAM = UNITS.find((unit) => unit.word === 'g') ?? null

const gramsText = (weighed: Weighed): string => {
  const shown = sensible(weighed.value, GRAM)
  return `${sensibleText(shown, null, 'g')}${weighed.how ? ` (${weighed.how})` : ''}`
}

/** "weighs about 250 g", or each figure where it depends on how it lies: "220 g (packed) or 145 g (loose)". */
export const weighsText = (weighs: ForCovers['weighs']): string => `about ${weighs.map(gramsText).join(' or ')}`

/** "about 2 US cup" for a weight. */
export const fillsText = (fills: ForCovers['fills']): string =>
  `about ${fills
    .map(({ weighed, unit }) => {
      const shown = sensible(weighed.value, unit)
      return `${sensibleText(shown, null, unitText(unit))}${weighed.how ? ` (${weighed.how})` : ''}`
    })
    .join(' or ')}`

/** "1.12 kg to buy, if that is ready to cook": in a few words. */
export const boughtText = (buys: NonNullable<ForCovers['buys']>): string =>
  `${sensibleText(sensible(buys.grams, GRAM), null, 'g')} to buy, if that is ready to cook`

/** "buy 1.12 kg if that is its weight ready to cook: 11 % is crown, tops and scrapings". */
export const buysText = (buys: NonNullable<ForCovers['buys']>): string =>
  `buy ${sensibleText(sensible(buys.grams, GRAM), null, 'g')} if that is its weight ready to cook: ${buys.refuse} % is ${buys.what}`

/** The amount beside an ingredient, and the exact one where that was rounded. */
export const coversText = (quantity: ForCovers): { readonly amount: string; readonly exactly: string | null } => {
  const { amount, exactly } = quantity
  if (!amount || !exactly) return { amount: 'to taste', exactly: null }
  const by = Math.abs(amount.least.by) > Math.abs(amount.most?.by ?? 0) ? amount.least.by : (amount.most?.by ?? amount.least.by)
  const share = shareText(by)
  return {
    amount: sensibleText(amount.least, amount.most, amount.unit),
    exactly: share === '' ? null : `exactly ${amountText({ ...exactly, upTo: exactly.upTo ?? undefined })}: ${share}`,
  }
}
