import type { KnownNeed } from '#lib/domain/people.ts'
import { countOf, listText } from './clock.ts'
import { foodWord } from './food.ts'

const STATES = new Set(['vegetarian', 'vegan', 'pescatarian', 'coeliac', 'halal', 'kosher', 'pregnancy', 'low-immunity'])

/** Whether the need is how somebody eats or is; any other one is what they keep away from. */
export const isState = (need: string): boolean => STATES.has(need) || need.endsWith('-free')

const stateGrades: Readonly<Record<KnownNeed['grade'], string>> = {
  dislikes: ' (not strictly)',
  avoids: '',
  allergy: ' (as an allergy)',
  severe: ' (severe)',
}

/** "vegetarian", "coeliac (severe)", "no alcohol", "sesame allergy", "severe sesame allergy". */
export const needText = ({ need, grade }: Pick<KnownNeed, 'need' | 'grade'>): string => {
  const word = need.replaceAll('-', ' ')
  if (isState(need)) return `${need === 'pregnancy' ? 'pregnant' : word}${stateGrades[grade]}`
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

/** What is made right for a need: "Rice without sesame", "Rice (vegetarian)". */
export const rightForText = (made: string, need: string): string =>
  isState(need) ? `${made} (${need.replaceAll('-', ' ')})` : `${made} without ${foodWord(need)}`

/** "two guests (vegetarian) and one guest (sesame allergy)". */
export const needsText = (needs: readonly KnownNeed[]): string =>
  listText(needs.map((need) => `${countOf(need.guests, 'guest')} (${needText(need)})`))
