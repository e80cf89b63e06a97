import { minutesOf } from './duration.ts'
import type { Dish, Step, Way } from './menu.ts'

/** What makes work hard on somebody who has had a glass: a blade, hot fat or sugar, something heavy and hot, or that it takes long. */
export type HardWork = 'sharp' | 'hot-fat' | 'hot-load' | 'long'

/**
 * Common practice, no source: cuts and burns are what kitchens are known for. Read from the words, so it may miss what is put otherwise;
 * a reason for caution and never a promise that the rest is safe.
 */
const WORDS: readonly (readonly [HardWork, RegExp])[] = [
  [
    'sharp',
    /\b(?:carv(?:e|ing)|slic(?:e|ing)|chop(?:ping)?|dic(?:e|ing)|mince|julienne|fillet(?:ing)? (?:the|a)|debon(?:e|ing)|shuck(?:ing)?|mandoline?|cut(?:ting)? (?!out the)|score|scoring|trim(?:ming)?|halv(?:e|ing)|quarter)\b/i,
  ],
  [
    'hot-fat',
    /\b(?:deep[- ]?fry(?:ing)?|fry(?:ing)?|sear(?:ing)?|saut[eé]|flamb[eé]|brown(?:ing)? (?:the|in|it)|hot (?:oil|fat)|carameli[sz](?:e|ing)|boiling sugar)(?![a-z])/i,
  ],
  [
    'hot-load',
    /\b(?:drain(?:ing)?|strain(?:ing)?|pour off|lift (?:it |them |the [a-z]+ )?out|boiling water|hot (?:tray|tin|pan|stock))\b/i,
  ],
]

const LONG_MINUTES = 15

/** Why a step is hard work in one of its ways, or null: what a cook who drinks is kept from. Work left alone never is. */
export const hardWork = (step: Pick<Step, 'does' | 'role'>, ways: readonly Way[], dish: Dish | null): HardWork | null => {
  const attended = ways.filter(({ care }) => care !== 'leave')
  if (attended.length === 0) return null
  if (step.role === 'carry' && dish?.carry?.how === 'hot') return 'hot-load'
  const said = WORDS.find(([, words]) => words.test(step.does))
  if (said) return said[0]
  return attended.some(({ care, takes }) => care === 'hands-on' && minutesOf(takes.likely) >= LONG_MINUTES) ? 'long' : null
}
