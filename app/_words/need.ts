import type { KnownNeed } from '#lib/domain/people.ts'
import { countOf, listText } from './clock.ts'

/** Needs that are how somebody eats; any other one is what they keep away from. */
const WAYS_OF_EATING = new Set(['vegetarian', 'vegan', 'pescatarian', 'coeliac', 'halal', 'kosher'])

/** "vegetarian", "no alcohol", "sesame allergy", "severe sesame allergy". */
export const needText = ({ need, grade }: Pick<KnownNeed, 'need' | 'grade'>): string => {
  const word = need.replaceAll('-', ' ')
  if (need === 'pregnancy') return 'pregnant'
  if (need === 'low-immunity') return word
  if (WAYS_OF_EATING.has(need) || need.endsWith('-free')) return word
  switch (grade) {
    case 'severe':
      return `severe ${word} allergy`
    case 'allergy':
      return `${word} allergy`
    case 'avoids':
      return `no ${word}`
    case 'dislikes':
      return `would rather have no ${word}`
  }
}

/** "two guests (vegetarian) and one guest (sesame allergy)". */
export const needsText = (needs: readonly KnownNeed[]): string =>
  listText(needs.map((need) => `${countOf(need.guests, 'guest')} (${needText(need)})`))
