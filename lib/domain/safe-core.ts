import type { Ingredient } from './ingredient.ts'

/** The least temperature inside a food that is published for it, and the rest it needs then. */
export interface SafeCore {
  readonly words: string
  /** As printed in °C; the rule itself is in °F. */
  readonly atLeastC: number
  readonly restMinutes: number
}

interface Row extends SafeCore {
  readonly foods: RegExp
}

const row = (words: string, atLeastC: number, restMinutes: number, foods: string): Row => ({
  words,
  atLeastC,
  restMinutes,
  foods: new RegExp(`\\b(?:${foods})\\b`, 'i'),
})

const NOT_THE_FOOD = /\b(?:stock|broth|bouillon|fat|dripping|sauce|paste|gelatine|noodles?|free|seasoning)\b/i
const GROUND = /\b(?:mince[ds]?|ground|sausages?|sausagemeat|burgers?|meatballs?)\b/i

/** FoodSafety.gov, "Cook to a Safe Minimum Internal Temperature": 145, 160 and 165 °F, printed as 63, 71 and 74 °C. */
const ROWS: readonly Row[] = [
  row('poultry', 74, 0, 'poultry|chickens?|turkey|duck|ducks|goose|capon|guinea fowl|quails?|poussins?'),
  row('whole cuts of beef, veal, lamb and goat', 63, 3, 'beef|veal|lamb|mutton|goat|bison|steaks?'),
  row('whole cuts of pork', 63, 3, 'pork|gammon'),
  row('rabbit and venison', 71, 0, 'rabbit|hare|venison'),
  row(
    'fish',
    63,
    0,
    'fish|salmon|trout|cod|haddock|hake|halibut|pollock|sea bass|bream|mackerel|tuna|sole|plaice|turbot|monkfish',
  ),
]
const GROUND_MEAT: SafeCore = { words: 'minced or ground meat and sausages', atLeastC: 71, restMinutes: 0 }
const EGG_DISHES: SafeCore = { words: 'egg dishes', atLeastC: 71, restMinutes: 0 }

const plain = ({ words, atLeastC, restMinutes }: SafeCore): SafeCore => ({ words, atLeastC, restMinutes })

const coresOf = ({ food, contains }: Pick<Ingredient, 'food' | 'contains'>): SafeCore[] => {
  if (NOT_THE_FOOD.test(food)) return []
  const named = ROWS.filter((one) => one.foods.test(food))
  const isPoultry = named.some((one) => one.atLeastC === 74)
  if (GROUND.test(food) && !isPoultry && (named.length > 0 || contains.includes('meat') || /sausage|burger|meatball/i.test(food)))
    return [GROUND_MEAT]
  const eggs = contains.includes('egg') || /\beggs?\b/i.test(food) ? [EGG_DISHES] : []
  return [...named.map(plain), ...eggs]
}

/** The rows that the names of a dish's ingredients point to, each once. None means that none is known, never that all is safe. */
export const safeCores = (ingredients: readonly Pick<Ingredient, 'food' | 'contains'>[]): readonly SafeCore[] => [
  ...new Map(ingredients.flatMap(coresOf).map((core) => [core.words, core])).values(),
]
