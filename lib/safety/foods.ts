import type { Ingredient } from '#lib/domain/ingredient.ts'

/**
 * How a food bears standing out: dry or sharp enough to stand, a raw plant until it is heated, rice and what else is dry until it is cooked in
 * a pan, and whatever is perishable from the start. What is not on a list is "not-known", and counts as perishable.
 */
export type FoodSort = 'stands' | 'plant' | 'starch' | 'rice' | 'perishable' | 'not-known'

const word = (words: string): RegExp => new RegExp(`\\b(?:${words})\\b`, 'iu')

// Our own lists. The kinds are those of the Food Code's "time/temperature control for safety food", 1-201.10(B), from memory: animal food raw or
// heated, plants that are heated, sprouts, cut melon, tomato and leafy greens, garlic in oil.
const RICE = word('rice|risotto')
const STANDS = word(
  'sugar|salt|pepper|peppercorns?|oil|vinegar|bread|breadcrumbs|crumbs|crackers?|caraway|cumin|coriander seeds?|cinnamon|nutmeg|cloves?|bay leaf|bay leaves|star anise|vanilla|paprika|turmeric|saffron|spices?|seeds?|nuts?|almonds?|hazelnuts?|walnuts?|pistachios?|chocolate|cocoa|honey|syrup|treacle|jam|marmalade|chutney|mustard|wine|cider|beer|brandy|rum|port|sherry|water|tea|coffee|baking powder|bicarbonate|yeast|raisins|sultanas|dried|biscuits?|olives|capers|pickles?|soy sauce|butter|ghee|lard|stock cubes?',
)
const STARCH = word(
  'flour|oats|oatmeal|cornflour|semolina|polenta|pasta|spaghetti|penne|lasagne|macaroni|noodles|couscous|bulgur|quinoa|barley|spelt|beans|lentils|chickpeas|split peas|dried peas',
)
const PLANT = word(
  'apples?|pears?|quinces?|plums?|cherries|cherry|peach(?:es)?|apricots?|rhubarb|figs?|berries|strawberries|raspberries|blackberries|blueberries|bananas?|mango(?:es)?|grapes?|oranges?|lemons?|limes?|grapefruit|zest|onions?|shallots?|garlic|leeks?|chives|carrots?|parsnips?|celeriac|celery|beetroots?|swede|turnips?|radish(?:es)?|potato(?:es)?|artichokes?|asparagus|broccoli|cauliflower|cabbage|kale|sprouts?|fennel|aubergines?|courgettes?|(?:red|green|yellow|orange|bell|sweet) peppers?|peppers|chill?i(?:es)?|squash|pumpkins?|cucumbers?|mushrooms?|green beans|french beans|runner beans|peas|sweetcorn|corn|ginger|parsley|thyme|rosemary|sage|mint|basil|dill|tarragon|coriander|herbs?|chicory|radicchio|avocados?|olives',
)
const CUT = word(
  'melons?|watermelons?|tomato(?:es)?|lettuce|spinach|rocket|salad leaves|bean ?sprouts|alfalfa|tofu|tin|tinned|can|canned|cooked',
)

const ANIMAL = word(
  'milk|cream|crème|yogh?urt|cheese|curd|ricotta|mozzarella|feta|mascarpone|paneer|eggs?|yolks?|meat|chicken|turkey|duck|goose|beef|veal|lamb|mutton|pork|ham|bacon|sausages?|mince|liver|rabbit|venison|game|fish|salmon|trout|cod|hake|haddock|mackerel|tuna|bass|sole|prawns?|shrimps?|crab|lobster|mussels?|clams?|oysters?|scallops?|squid|stock|broth|mayonnaise|aioli|custard|pesto|hummus',
)

/** Its sort by its name and by what it contains; what says two things is the more perishable. */
export const foodSort = ({ food, contains }: Pick<Ingredient, 'food' | 'contains'>): FoodSort => {
  if (contains.some((each) => ['meat', 'poultry', 'fish', 'shellfish', 'pork', 'egg', 'eggs', 'dairy'].includes(each)))
    return 'perishable'
  const head = food.split(/[,(;]/)[0] ?? ''
  // "chicken stock cubes" and "fish sauce" stand; "egg noodles" are dry.
  if (word('stock cubes?|fish sauce|egg noodles|coconut milk powder|milk powder|peanut butter').test(food)) return 'stands'
  if (ANIMAL.test(food) || CUT.test(food)) return 'perishable'
  if (RICE.test(head)) return word('rice vinegar|rice wine|rice flour').test(head) ? 'stands' : 'rice'
  if (STARCH.test(head)) return 'starch'
  if (PLANT.test(head)) return 'plant'
  return STANDS.test(head) ? 'stands' : 'not-known'
}

/** How food was heated: what is dry becomes bread in the oven and porridge in a pan. */
export type Heated = 'not' | 'baked' | 'in-a-pan'

const mustBeKept = (sort: FoodSort, heated: Heated): boolean => {
  switch (sort) {
    case 'perishable':
    case 'not-known':
      return true
    case 'plant':
    case 'rice':
      return heated !== 'not'
    case 'starch':
      return heated === 'in-a-pan'
    case 'stands':
      return false
  }
}

/** Whether food of these sorts must be kept hot or cold: a plant and rice once they were heated, what is dry once it was cooked in a pan. */
export const isPerishable = (sorts: readonly FoodSort[], heated: Heated): boolean =>
  sorts.some((sort) => mustBeKept(sort, heated))

/** Live shellfish with two shells. */
export const isShellfish = ({ food }: Pick<Ingredient, 'food'>): boolean =>
  word('mussels?|clams?|cockles?|oysters?|razor clams?').test(food) &&
  !word('sauce|tinned|tin|smoked|cooked|mushrooms?').test(food)

export const isEgg = ({ food, contains }: Pick<Ingredient, 'food' | 'contains'>): boolean =>
  contains.includes('egg') || contains.includes('eggs') || word('eggs?|yolks?').test(food)

export const isFrozen = ({ food }: Pick<Ingredient, 'food'>): boolean => word('frozen').test(food)
