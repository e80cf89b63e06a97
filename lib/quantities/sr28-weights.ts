/**
 * Grams of household measures, typed in from USDA Standard Reference 28 (2016), table WEIGHT. Spoons, cups and fluid ounces are
 * US customary. `names` are what recipes call the food; nothing else is taken to be it.
 */
export interface WeightRow {
  readonly ndb: string
  readonly food: string
  readonly names: readonly string[]
  readonly measures: readonly WeightMeasure[]
}

export interface WeightMeasure {
  readonly n: string
  readonly of: 'tsp' | 'tbsp' | 'cup' | 'fl oz' | 'piece'
  readonly grams: string
  /** How it lies in the measure, or which size of piece. */
  readonly how?: string
}

/** "cup packed 220" → one cup, packed, 220 g. */
const measure = (text: string): WeightMeasure => {
  const words = text.split(' ')
  const grams = words.pop() ?? ''
  const of = words[0] === 'fl' ? 'fl oz' : (words[0] as Exclude<WeightMeasure['of'], 'fl oz'>)
  const how = words.slice(of === 'fl oz' ? 2 : 1).join(' ')
  return { n: '1', of, grams, ...(how ? { how } : {}) }
}

const row = (ndb: string, food: string, names: string, measures: string): WeightRow => ({
  ndb,
  food,
  names: names.split('|'),
  measures: measures.split('; ').map(measure),
})

export const WEIGHTS: readonly WeightRow[] = [
  row(
    '20081',
    'Wheat flour, white, all-purpose',
    'flour|plain flour|all-purpose flour|all purpose flour|white flour|wheat flour',
    'cup 125',
  ),
  row('20083', 'Wheat flour, white, bread', 'bread flour|strong flour|strong white flour|strong white bread flour', 'cup 137'),
  row('20080', 'Wheat flour, whole-grain', 'wholemeal flour|whole wheat flour|whole-wheat flour|wholegrain flour', 'cup 120'),
  row('19335', 'Sugars, granulated', 'sugar|granulated sugar|white sugar', 'tsp 4.2; cup 200'),
  row(
    '19334',
    'Sugars, brown',
    'brown sugar|light brown sugar|dark brown sugar|soft brown sugar',
    'tsp unpacked 3; tsp packed 4.6; cup packed 220; cup unpacked 145',
  ),
  row(
    '19336',
    'Sugars, powdered',
    'icing sugar|powdered sugar|confectioners sugar',
    'tsp 2.5; tbsp unsifted 8; cup unsifted 120; cup sifted 100',
  ),
  row('01145', 'Butter, without salt', 'butter|unsalted butter', 'tbsp 14.2; cup 227; piece stick 113'),
  row('01053', 'Cream, fluid, heavy whipping', 'heavy cream|heavy whipping cream', 'tbsp 15; fl oz 29.8; cup 238'),
  row('01049', 'Cream, fluid, half and half', 'half and half|half-and-half', 'tbsp 15; fl oz 30.2; cup 242'),
  row('01052', 'Cream, fluid, light whipping', 'light whipping cream|whipping cream', 'tbsp 15; cup 239'),
  row('01077', 'Milk, whole, 3.25% milkfat', 'milk|whole milk', 'tbsp 15; fl oz 30.5; cup 244'),
  row('01116', 'Yogurt, plain, whole milk', 'yogurt|yoghurt|plain yogurt|plain yoghurt|natural yoghurt', 'cup 245'),
  row('01056', 'Cream, sour, cultured', 'sour cream|soured cream', 'tbsp 12; cup 230'),
  row(
    '04053',
    'Oil, olive, salad or cooking',
    'olive oil|extra virgin olive oil|extra-virgin olive oil',
    'tsp 4.5; tbsp 13.5; cup 216',
  ),
  row('04044', 'Oil, soybean, salad or cooking', 'soybean oil|vegetable oil', 'tsp 4.5; tbsp 13.6; cup 218'),
  row('04582', 'Oil, canola', 'canola oil|rapeseed oil', 'tsp 4.5; tbsp 14; cup 218'),
  row('19296', 'Honey', 'honey|runny honey|clear honey', 'tbsp 21; cup 339'),
  row('19353', 'Syrups, maple', 'maple syrup', 'tbsp 20; cup 315'),
  row('20044', 'Rice, white, long-grain, raw', 'long-grain rice|long grain rice|white rice', 'cup 185'),
  row('20052', 'Rice, white, short-grain, uncooked', 'short-grain rice|short grain rice|pudding rice', 'cup 200'),
  row('02047', 'Salt, table', 'salt|table salt|fine salt', 'tsp 6; tbsp 18; cup 292'),
  row('18369', 'Leavening agents, baking powder, double-acting', 'baking powder', 'tsp 4.6'),
  row('18372', 'Leavening agents, baking soda', 'baking soda|bicarbonate of soda', 'tsp 4.6'),
  row('18375', "Leavening agents, yeast, baker's, active dry", 'active dry yeast|dried yeast', 'tsp 4; tbsp 12'),
  row('19165', 'Cocoa, dry powder, unsweetened', 'cocoa|cocoa powder|unsweetened cocoa', 'tbsp 5.4; cup 86'),
  row('20027', 'Cornstarch', 'cornflour|cornstarch|corn starch', 'cup 128'),
  row('01032', 'Cheese, parmesan, grated', 'grated parmesan|parmesan, grated', 'tbsp 5; cup 100'),
  row('01009', 'Cheese, cheddar', 'cheddar|cheddar cheese', 'cup diced 132; cup shredded 113; cup melted 244'),
  row('08120', 'Cereals, oats, regular and quick, dry', 'oats|rolled oats|porridge oats', 'cup 81'),
  row('12061', 'Nuts, almonds', 'almonds', 'cup whole 143; cup slivered 108; cup ground 95; piece 1.2'),
  row('12155', 'Nuts, walnuts, english', 'walnuts', 'cup chopped 117; cup ground 80; cup pieces 120'),
  row('16069', 'Lentils, raw', 'lentils', 'tbsp 12; cup 192'),
  row('16056', 'Chickpeas, mature seeds, raw', 'dried chickpeas', 'tbsp 12.5; cup 200'),
  row('02046', 'Mustard, prepared, yellow', 'yellow mustard', 'cup 249'),
  row('16123', 'Soy sauce made from soy and wheat', 'soy sauce', 'tsp 5.3; tbsp 16; cup 255'),
  row('16124', 'Soy sauce made from soy (tamari)', 'tamari', 'tsp 6; tbsp 18'),
  row('02053', 'Vinegar, distilled', 'distilled vinegar|white vinegar', 'tsp 5; tbsp 14.9; cup 238'),
  row('02068', 'Vinegar, red wine', 'red wine vinegar', 'tbsp 14.9; cup 239'),
  row('04025', 'Salad dressing, mayonnaise, regular', 'mayonnaise', 'tbsp 13.8; cup 220'),
  row('09298', 'Raisins, seedless', 'raisins', 'cup packed 165; cup not packed 145'),
  row('20012', 'Bulgur, dry', 'bulgur|bulgur wheat', 'cup 140'),
  row('20028', 'Couscous, dry', 'couscous', 'cup 173'),
  row('20035', 'Quinoa, uncooked', 'quinoa', 'cup 170'),
  row('14096', 'Alcoholic beverage, wine, table, red', 'red wine', 'fl oz 29.4'),
  row('14106', 'Alcoholic beverage, wine, table, white', 'white wine|dry white wine', 'fl oz 29.4'),
  row('14003', 'Alcoholic beverage, beer, regular', 'beer', 'fl oz 29.7'),
  row('11215', 'Garlic, raw', 'garlic', 'tsp 2.8; cup 136; piece clove 3'),
  row(
    '11282',
    'Onions, raw',
    'onion|onions',
    'tbsp chopped 10; cup chopped 160; piece large 150; piece medium 110; piece small 70',
  ),
  row(
    '01123',
    'Egg, whole, raw, fresh',
    'egg|eggs',
    'cup 243; piece small 38; piece medium 44; piece large 50; piece extra large 56; piece jumbo 63',
  ),
  row('01124', 'Egg, white, raw, fresh', 'egg white|egg whites', 'cup 243; piece large 33'),
  row('01125', 'Egg, yolk, raw, fresh', 'egg yolk|egg yolks', 'cup 243; piece large 17'),
  row('18079', 'Bread crumbs, dry, grated, plain', 'dried breadcrumbs|dry breadcrumbs|dry bread crumbs', 'cup 108'),
  row(
    '19080',
    'Candies, semisweet chocolate',
    'semisweet chocolate chips',
    'cup large chips 182; cup chips 168; cup mini chips 173',
  ),
]
