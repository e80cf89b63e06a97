/**
 * What a dish can be about, and the words that name it; a phrase goes before its last word ("sweet potatoes" are no potatoes).
 * Our own list after common practice, no source; what is not on it is never called the main ingredient.
 */
const FOODS = {
  chicken: ['chicken', 'chickens', 'poussin'],
  duck: ['duck', 'ducks'],
  goose: ['goose'],
  turkey: ['turkey'],
  guineafowl: ['guinea fowl', 'guineafowl'],
  quail: ['quail', 'quails'],
  pheasant: ['pheasant', 'pheasants'],
  beef: ['beef', 'steak', 'steaks', 'brisket', 'oxtail'],
  veal: ['veal'],
  lamb: ['lamb', 'mutton', 'hogget'],
  pork: ['pork', 'ham', 'bacon', 'gammon', 'pancetta'],
  venison: ['venison'],
  rabbit: ['rabbit'],
  sausages: ['sausage', 'sausages'],
  salmon: ['salmon'],
  trout: ['trout'],
  cod: ['cod'],
  haddock: ['haddock'],
  mackerel: ['mackerel'],
  tuna: ['tuna'],
  bass: ['sea bass', 'seabass'],
  prawns: ['prawn', 'prawns', 'shrimp', 'shrimps'],
  crab: ['crab'],
  lobster: ['lobster'],
  mussels: ['mussel', 'mussels'],
  scallops: ['scallop', 'scallops'],
  squid: ['squid'],
  eggs: ['egg', 'eggs'],
  cheese: ['cheese', 'cheeses', 'cheddar', 'feta', 'halloumi', 'ricotta', 'mozzarella', 'paneer'],
  tofu: ['tofu'],
  lentils: ['lentil', 'lentils'],
  chickpeas: ['chickpea', 'chickpeas'],
  'green beans': ['green bean', 'green beans', 'french beans', 'runner beans', 'fine beans'],
  beans: ['beans', 'haricots', 'flageolets', 'broad beans'],
  peas: ['peas'],
  rice: ['rice'],
  pasta: ['pasta', 'spaghetti', 'lasagne', 'macaroni', 'tagliatelle', 'penne', 'orzo', 'gnocchi'],
  noodles: ['noodle', 'noodles'],
  polenta: ['polenta'],
  couscous: ['couscous'],
  'pearl barley': ['barley'],
  potatoes: ['potato', 'potatoes'],
  'sweet potatoes': ['sweet potato', 'sweet potatoes'],
  carrots: ['carrot', 'carrots'],
  parsnips: ['parsnip', 'parsnips'],
  celeriac: ['celeriac'],
  beetroot: ['beetroot', 'beetroots', 'beets'],
  swede: ['swede'],
  turnips: ['turnip', 'turnips'],
  artichokes: ['artichoke', 'artichokes'],
  leeks: ['leek', 'leeks'],
  cabbage: ['cabbage', 'cabbages'],
  kale: ['kale'],
  spinach: ['spinach'],
  chard: ['chard'],
  'brussels sprouts': ['brussels sprouts', 'sprouts'],
  broccoli: ['broccoli'],
  cauliflower: ['cauliflower', 'cauliflowers'],
  fennel: ['fennel'],
  asparagus: ['asparagus'],
  mushrooms: ['mushroom', 'mushrooms', 'ceps', 'chanterelles'],
  aubergine: ['aubergine', 'aubergines', 'eggplant', 'eggplants'],
  courgettes: ['courgette', 'courgettes', 'zucchini'],
  peppers: ['peppers', 'bell pepper', 'red pepper', 'green pepper', 'yellow pepper'],
  tomatoes: ['tomato', 'tomatoes'],
  squash: ['squash', 'pumpkin', 'pumpkins'],
  cucumber: ['cucumber', 'cucumbers'],
  chestnuts: ['chestnut', 'chestnuts'],
  apples: ['apple', 'apples'],
  pears: ['pear', 'pears'],
  quinces: ['quince', 'quinces'],
  plums: ['plum', 'plums'],
  cherries: ['cherry', 'cherries'],
  peaches: ['peach', 'peaches', 'nectarines'],
  apricots: ['apricot', 'apricots'],
  rhubarb: ['rhubarb'],
  figs: ['fig', 'figs'],
  strawberries: ['strawberry', 'strawberries'],
  raspberries: ['raspberry', 'raspberries'],
  bananas: ['banana', 'bananas'],
  mangoes: ['mango', 'mangoes'],
  chocolate: ['chocolate'],
} as const

/** A food of our list that a dish can mainly be of. */
export type MainFood = keyof typeof FOODS

// With one of these words it is something made of the food, or in place of it, and no main ingredient.
const MADE_OF =
  /\b(stock|broth|bouillon|fat|dripping|lard|oil|sauce|ketchup|paste|powder|flour|starch|flakes|seeds?|vinegar|juice|zest|syrup|jelly|jam|chutney|gelatine|extract|vanilla|coffee|cocoa|shoots|free|vegan|vegetarian|style|flavou?red|tea|cider|brandy|liqueur|salt|crumbs|milk|cream|casings?)\b/
// With one of these, anywhere in its line, it is a small part of the dish.
const LITTLE = /\bto (brush|glaze|serve|garnish|finish|coat)\b|\bfor (brushing|glazing|serving|garnish|coating)\b/

const PHRASES: readonly (readonly [phrase: string, food: MainFood])[] = (
  Object.entries(FOODS) as [MainFood, readonly string[]][]
).flatMap(([food, phrases]) => phrases.map((phrase) => [phrase, food] as const))

interface Found {
  readonly food: MainFood
  readonly from: number
  readonly to: number
}

const phrasesIn = (text: string): Found[] => {
  const words = text.toLowerCase().split(/[^a-z]+/)
  const joined = ` ${words.join(' ')} `
  const found: Found[] = []
  for (const [phrase, food] of PHRASES) {
    const from = joined.indexOf(` ${phrase} `)
    if (from >= 0) found.push({ food, from, to: from + phrase.length })
  }
  // "green beans" holds "beans": the longer phrase stands.
  return found.filter(
    (one) => !found.some((other) => other !== one && other.from <= one.from && other.to >= one.to && other.food !== one.food),
  )
}

/**
 * The food of the list that an ingredient is, by what stands before its first comma or bracket; where several are named, the
 * last ("duck eggs" are eggs). Null for everything else, such as stock, oil and seeds of it.
 */
export const mainFoodOf = (ingredient: string): MainFood | null => {
  const head = ingredient.split(/[,(;]/)[0] ?? ''
  if (MADE_OF.test(head.toLowerCase()) || LITTLE.test(ingredient.toLowerCase())) return null
  return phrasesIn(head).reduce<Found | null>((last, one) => (last === null || one.to > last.to ? one : last), null)?.food ?? null
}

/** Every food of the list that a dish's name has. */
export const mainFoodsIn = (name: string): readonly MainFood[] => [...new Set(phrasesIn(name).map(({ food }) => food))]
