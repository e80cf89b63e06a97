import { endOf } from './amount.ts'
import { withoutBullet } from './bullet.ts'
import { durationAt } from './duration.ts'
import { numberAt, rangeAt } from './number.ts'
import type { DecimalMark, RecipePreview, Yields } from './preview.ts'
import { type Token, tokenAt, tokensOf } from './tokens.ts'

const INGREDIENTS = /^(?:the )?(?:ingredients|you need|you'll need|you will need|what you need|shopping list)(?: list)?\s*:?$/iu
const METHOD =
  /^(?:the )?(?:method|directions?|instructions?|preparation|steps|procedure|how to make it|what to do|to make)\s*:?$/iu

/** Whether a line only says that the ingredients follow. */
export const isIngredientsHeading = (line: string): boolean => line.length <= 40 && INGREDIENTS.test(line.trim())
/** Whether a line only says that the method follows. */
export const isMethodHeading = (line: string): boolean => line.length <= 40 && METHOD.test(line.trim())

const YIELD_WORDS = /^(serves|makes|yields?|servings?|portions?|enough|feeds|sufficient|for)$/

const yieldsAt = (tokens: readonly Token[], at: number, mark: DecimalMark): Yields | null => {
  const range = rangeAt(tokens, at, mark)
  if (!range || range.least.valueOf() <= 0 || range.most.valueOf() > 1000) return null
  const rest = tokens.slice(range.next, range.next + 4)
  const end = rest.findIndex((token) => token.kind !== 'word')
  const of = (end < 0 ? rest : rest.slice(0, end)).map((token) => token.low).join(' ')
  return { least: range.least.valueOf(), most: range.most.valueOf(), of: /^(people|persons|guests)$/.test(of) ? '' : of }
}

/** "Serves 4–6", "Makes 12 muffins", "Yield: 8 servings", "4 servings", "(for 8)", "For 6 people": how much of the dish there is. */
export const readYields = (line: string, mark: DecimalMark): Yields | null => {
  if (line.length > 80) return null
  const tokens = tokensOf(line)
  let at = 0
  while (
    at < 3 &&
    (tokenAt(tokens, at).text === '(' ||
      YIELD_WORDS.test(tokenAt(tokens, at).low) ||
      /^(:|to|about)$/.test(tokenAt(tokens, at).low))
  )
    at += 1
  const said = tokens.slice(0, at).some((token) => YIELD_WORDS.test(token.low))
  const found = yieldsAt(tokens, at, mark)
  if (!found) return null
  const end = rangeAt(tokens, at, mark)?.next ?? at
  if (said) return tokens.length - end <= 5 ? found : null
  return /^(servings?|portions?|people|serves)$/.test(tokenAt(tokens, end).low) && tokens.length <= end + 2 ? found : null
}

/** Minutes of "Prep 15 min, cook 1 hr 30 min", "Total time: 2 hours"; null when the line says something else. */
export const readTotals = (line: string, mark: DecimalMark): Partial<RecipePreview['total']> | null => {
  if (line.length > 120) return null
  const tokens = tokensOf(line)
  if (!/^(prep|preparation|cook|cooking|total|ready|time|active)$/.test(tokenAt(tokens, 0).low)) return null
  const found: { prep?: number; cook?: number; total?: number } = {}
  let what: 'prep' | 'cook' | 'total' | null = null
  for (let at = 0; at < tokens.length; at += 1) {
    const { low } = tokenAt(tokens, at)
    if (/^(prep|preparation|active)$/.test(low)) what = 'prep'
    else if (/^(cook|cooking)$/.test(low)) what = 'cook'
    else if (/^(total|ready)$/.test(low)) what = 'total'
    const time = durationAt(tokens, at, mark)
    if (time && what) {
      found[what] = time.most ?? time.least ?? 0
      at = time.next - 1
    } else if (
      tokenAt(tokens, at).kind === 'word' &&
      !/^(prep|preparation|active|cook|cooking|total|ready|time|in|and|plus)$/.test(low)
    )
      return null
  }
  return Object.keys(found).length > 0 ? found : null
}

/** "For the dumplings:", "Sauce:": the name of a part, without its colon; null when the line is no such heading. */
export const readSection = (line: string): string | null => {
  const text = line.trim()
  if (text.length > 60 || /\d/.test(text)) return null
  const name = text.replace(/\s*:$/u, '')
  if (text !== name) return name
  return /^for the [\p{L} -]{2,40}$/iu.test(text) ? text : null
}

/** A number that begins a step: "1.", "2)", "Step 3:"; where the words after it begin, or 0. */
export const stepNumber = (line: string): number =>
  /^\s*(?:step\s+\d{1,2}\s*[.:)–-]?|\(?\d{1,2}[.)](?=\s|\p{L}))\s*/iu.exec(line)?.[0].length ?? 0

/** Whether a line looks like one of ingredients: an amount at its beginning or end, or a word of one ("a pinch of", "juice of"). */
export const hasAmount = (line: string, mark: DecimalMark): boolean => {
  const tokens = tokensOf(withoutBullet(line).slice(0, 80))
  if (numberAt(tokens, 0, mark) || tokenAt(tokens, 0).kind === 'number') return true
  // "Rib of beef, about 2.5 kg"
  if (endOf(tokens, mark)) return true
  const words = tokens.slice(0, 4).map((token) => token.low)
  const [first = '', second = ''] = words
  return (
    (/^(a|an|some)$/.test(first) && words.includes('of')) ||
    (/^(big|small|large|good|generous|handful|pinch|knob|bunch)$/.test(first) && words.includes('of')) ||
    (/^(juice|zest|grated|finely)$/.test(first) && words.includes('of')) ||
    /^(salt|pepper|seasoning)$/.test(first) ||
    (/^(sea|freshly|fine|flaky|kosher|black|white)$/.test(first) && /^(salt|pepper|ground|black)$/.test(second))
  )
}
