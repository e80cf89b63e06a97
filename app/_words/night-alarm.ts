import type { GuardLine } from '#lib/night/board.ts'
import { clockText, listText, sentence } from './clock.ts'
import { foodWord } from './food.ts'
import type { Names } from './names.ts'
import { isState } from './need.ts'

/** "nuts", "coeliac": a need as what is kept away, or how somebody eats. */
const needWord = (need: string): string => (isState(need) ? need.replaceAll('-', ' ') : foodWord(need))

/** "Do not serve the lamb shoulder to anyone who must not have nuts." */
export const alarmText = (dish: string, need: string | null, names: Names): string => {
  const what = names.dishName(dish)
  if (need === null) return `Do not serve “${what}” to anyone.`
  return isState(need)
    ? `Do not serve “${what}” to anyone who is ${needWord(need)}.`
    : `Do not serve “${what}” to anyone who must not have ${needWord(need)}.`
}

/** The same once everybody has heard it, for as long as something of the dish is left. */
export const alarmToldText = (
  { dish, need, at }: { readonly dish: string; readonly need: string | null; readonly at: number | string },
  zone: string,
  names: Names,
): string => `${alarmText(dish, need, names).slice(0, -1)}, unless it was made anew from the start after ${clockText(at, zone)}.`

/** "The plate without nuts first": the head of the line that guards a plate. */
export const guardHead = (need: string): string =>
  isState(need) ? `The ${needWord(need)} plate first` : `The plate without ${needWord(need)} first`

const DOES: Readonly<Record<GuardLine['does'], string>> = {
  begin: 'made first on its own board',
  cover: 'covered',
  plate: 'plated first',
  carry: 'carried on its own',
}

/** "Lamb shoulder: made first on its own board (done), plated first by Kim, carried by Lou." */
export const guardText = (guards: readonly GuardLine[], names: Names): string => {
  const [first] = guards
  if (!first) return ''
  const told = guards.map(({ does, isDone, cooks }) => {
    const who = cooks.length > 0 ? ` by ${listText(cooks.map(names.cookName))}` : ''
    return isDone ? `${DOES[does]}: done` : `${DOES[does]}${who}`
  })
  return `${sentence(names.dishName(first.dish))}: ${listText(told)}.`
}
