/** What kind of thing a food is when a dish is made larger: these do not simply grow in proportion. */
export type FoodNature = 'salt' | 'spice' | 'leavening' | 'thickener' | 'egg'

const NATURES: readonly (readonly [FoodNature, readonly string[]])[] = [
  ['leavening', ['baking powder', 'baking soda', 'bicarbonate of soda', 'bicarbonate', 'yeast', 'cream of tartar']],
  [
    'thickener',
    [
      'cornflour',
      'cornstarch',
      'corn starch',
      'arrowroot',
      'gelatine',
      'gelatin',
      'agar',
      'pectin',
      'xanthan gum',
      'potato starch',
    ],
  ],
  [
    'spice',
    [
      'black pepper',
      'white pepper',
      'ground pepper',
      'peppercorn',
      'peppercorns',
      'cayenne',
      'cayenne pepper',
      'chilli flakes',
      'chili flakes',
      'chilli powder',
      'chili powder',
      'red pepper flakes',
      'cumin',
      'coriander seeds',
      'ground coriander',
      'turmeric',
      'paprika',
      'cinnamon',
      'nutmeg',
      'mace',
      'cloves',
      'ground cloves',
      'cardamom',
      'allspice',
      'star anise',
      'saffron',
      'ginger powder',
      'ground ginger',
      'curry powder',
      'garam masala',
      'fennel seeds',
      'mustard seeds',
      'caraway',
      'juniper',
      'bay leaf',
      'bay leaves',
      'vanilla',
      'vanilla extract',
      'five-spice',
      'mixed spice',
    ],
  ],
  ['salt', ['salt', 'sea salt', 'fine salt', 'table salt', 'kosher salt', 'flaky salt', 'salt and pepper']],
  ['egg', ['egg', 'eggs', 'egg white', 'egg whites', 'egg yolk', 'egg yolks']],
]

// A food may end in a word of the list and be another thing: "duck egg" is an egg, "unsalted butter" is no salt.
const PLAIN = new Set([
  'large',
  'medium',
  'small',
  'free-range',
  'organic',
  'fresh',
  'freshly',
  'dried',
  'ground',
  'fine',
  'whole',
  'beaten',
  'coarse',
  'flaky',
  'instant',
  'fast-action',
  'active',
  'dry',
  'grated',
  'hot',
  'sweet',
  'smoked',
  'of',
  'a',
  'duck',
  'hen',
])

/** Its nature by its own words ("2 large eggs", "freshly ground black pepper"), without what follows a comma; null for all other food. */
export const foodNature = (food: string): FoodNature | null => {
  const words = (food.toLowerCase().split(/[,(;]/)[0] ?? '').split(/\s+/).filter(Boolean)
  if (words.length > 8) return null
  const whole = words.join(' ')
  if (words.length === 1 && whole === 'pepper') return 'spice'
  for (const [nature, names] of NATURES)
    for (const name of names) {
      if (whole !== name && !whole.endsWith(` ${name}`)) continue
      const before = words.slice(0, words.length - name.split(' ').length)
      if (before.every((word) => PLAIN.has(word))) return nature
    }
  return null
}
