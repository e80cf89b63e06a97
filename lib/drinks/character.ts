import type { Evening } from '#lib/domain/evening.ts'

/** What of a course bears on what is drunk with it. */
export type Trait = 'light' | 'full' | 'rich' | 'sharp' | 'sweet' | 'salty' | 'hot' | 'smoky' | 'red-meat'

const word = (words: string): RegExp => new RegExp(`\\b(?:${words})\\b`, 'iu')

// Our own list after common practice, no source.
const RED = word('beef|steaks?|lamb|mutton|hogget|venison|duck|goose|pigeon|oxtail|brisket|game')
const MEAT = word('chicken|pork|turkey|ham|bacon|sausages?|veal|rabbit|poultry|meat|guinea ?fowl')
const FISH = word(
  'fish|salmon|trout|cod|hake|haddock|mackerel|tuna|bass|bream|sole|prawns?|shrimps?|crab|lobster|mussels?|clams?|oysters?|scallops?|squid',
)
const SAVOURY = word(
  'onions?|garlic|shallots?|leeks?|stock|broth|mustard|soy|anchov(?:y|ies)|mushrooms?|potato(?:es)?|beans?|lentils?|rice|pasta|cabbage',
)
const SWEET = word(
  'sugar|honey|chocolate|caramel|toffee|meringue|pudding|ice cream|sorbet|posset|crumble|custard|cake|trifle|panna cotta|jelly|syrup|treacle|fudge',
)
const RICH = word(
  'cream|butter|cheese|curd|mayonnaise|aioli|hollandaise|pork belly|bacon|sausages?|duck|goose|pastry|fried|gratin|mascarpone|pancetta',
)
const SHARP = word(
  'lemons?|limes?|vinegar|tomato(?:es)?|rhubarb|sorrel|verjus|gooseberr(?:y|ies)|capers|pickled?|pickles|yogh?urt|cranberr(?:y|ies)',
)
const SALTY = word(
  'olives?|anchov(?:y|ies)|capers|ham|feta|salted|crisps|salami|prosciutto|oysters?|caviar|roe|parmesan|mature cheese|pecorino|soy',
)
const HOT = word('chill?i(?:es)?|cayenne|harissa|jalapeños?|curry|ginger|wasabi|horseradish|kimchi')
const SMOKY = word('smoked|smoky|charred|barbecued?|grilled|burnt')
const SLOW = word('braised?|stew|daube|roast(?:ed)?|slow|pie|casserole|gratin|confit')
const LIGHT = word(
  'salad|leaves|cucumber|asparagus|peas|soup|broth|cured|raw|poached|steamed|radish(?:es)?|fennel|greens|courgettes?',
)

/** What a course is like, by the names of its dishes and what is in them; empty when nothing there is understood. */
export const characterOf = (evening: Pick<Evening, 'dishes' | 'ingredients'>, course: string): ReadonlySet<Trait> => {
  const dishes = evening.dishes.filter((dish) => dish.course === course && dish.state === 'on')
  const ids = new Set(dishes.map(({ id }) => id))
  const names = dishes.map(({ name }) => name).join('; ')
  const foods = evening.ingredients.filter(({ dish }) => ids.has(dish)).map(({ food }) => food)
  const all = [names, ...foods].join('; ')
  const savoury = RED.test(all) || MEAT.test(all) || FISH.test(all) || SAVOURY.test(all)
  const sweet = SWEET.test(all) && !savoury
  const red = RED.test(all)
  const full = !sweet && (red || (MEAT.test(all) && SLOW.test(names)))
  const light = !sweet && !full && (FISH.test(all) || LIGHT.test(names))
  const traits: (Trait | false)[] = [
    light && 'light',
    full && 'full',
    RICH.test(all) && 'rich',
    SHARP.test(all) && 'sharp',
    sweet && 'sweet',
    SALTY.test(all) && 'salty',
    HOT.test(all) && 'hot',
    SMOKY.test(all) && 'smoky',
    red && 'red-meat',
  ]
  return new Set(traits.filter((trait) => trait !== false))
}
