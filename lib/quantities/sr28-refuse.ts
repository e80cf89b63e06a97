/** Refuse of food as bought, typed in from USDA Standard Reference 28 (2016), table FOOD_DES, field Refuse. */
export interface RefuseRow {
  readonly ndb: string
  readonly food: string
  readonly names: readonly string[]
  /** Percent of the bought weight that is not eaten. */
  readonly refuse: number
  readonly what: string
}

const row = (ndb: string, food: string, names: string, refuse: number, what: string): RefuseRow => ({
  ndb,
  food,
  names: names.split('|'),
  refuse,
  what,
})

export const REFUSE: readonly RefuseRow[] = [
  row('11124', 'Carrots, raw', 'carrot|carrots', 11, 'crown, tops and scrapings'),
  row('11282', 'Onions, raw', 'onion|onions', 10, 'stem ends, sprouts and defects'),
  row('11352', 'Potatoes, flesh and skin, raw', 'potato|potatoes', 25, 'parings and trimmings'),
  row('11246', 'Leeks, bulb and lower leaf-portion, raw', 'leek|leeks', 56, 'tops, root end and skin; untrimmed'),
  row('11143', 'Celery, raw', 'celery', 11, 'roots and trimmings'),
  row('11215', 'Garlic, raw', 'garlic', 13, 'knob and skin'),
  row('11677', 'Shallots, raw', 'shallot|shallots', 12, 'skins'),
  row('11090', 'Broccoli, raw', 'broccoli', 39, 'leaves and tough stalks with trimmings'),
  row('11135', 'Cauliflower, raw', 'cauliflower', 61, 'leaf stalks, cores and trimmings; untrimmed'),
  row('11011', 'Asparagus, raw', 'asparagus', 47, 'butt ends'),
  row('11457', 'Spinach, raw', 'spinach', 28, 'large stems and roots'),
  row('11250', 'Lettuce, butterhead, raw', 'butterhead lettuce|round lettuce', 26, 'outer leaves and core'),
  row('11251', 'Lettuce, cos or romaine, raw', 'cos lettuce|romaine lettuce|romaine', 6, 'core'),
  row('11252', 'Lettuce, iceberg, raw', 'iceberg lettuce', 5, 'core'),
  row('11253', 'Lettuce, green leaf, raw', 'green leaf lettuce', 36, 'outer leaves, core and trimmings'),
  row('11260', 'Mushrooms, white, raw', 'mushrooms|button mushrooms|white mushrooms', 3, 'trimmings'),
  row(
    '11821',
    'Peppers, sweet, red, raw',
    'red pepper|red peppers|red bell pepper|red bell peppers',
    18,
    'stem ends, seed and core',
  ),
  row('11529', 'Tomatoes, red, ripe, raw', 'tomato|tomatoes|ripe tomatoes', 9, 'core and stem ends'),
  row('11205', 'Cucumber, with peel, raw', 'cucumber|cucumbers', 3, 'ends'),
  row('11206', 'Cucumber, peeled, raw', 'peeled cucumber', 27, 'parings, ends and bruised spots'),
  row('11485', 'Squash, winter, butternut, raw', 'butternut squash|butternut', 16, 'seeds, rind and trimmings'),
  row('11957', 'Fennel, bulb, raw', 'fennel|fennel bulb|fennel bulbs', 28, 'stalk, leaves and core'),
  row('11052', 'Beans, snap, green, raw', 'green beans', 12, 'ends, strings, trimmings'),
  row('11304', 'Peas, green, raw', 'peas in the pod|shelled peas|fresh peas', 62, 'pods and inedible peas'),
  row(
    '11007',
    'Artichokes, globe or french, raw',
    'globe artichokes|artichokes',
    60,
    'stem and inedible parts of bracts and flowers',
  ),
  row('11080', 'Beets, raw', 'beetroot|beets', 33, 'parings and part tops'),
  row('11298', 'Parsnips, raw', 'parsnip|parsnips', 15, 'parings'),
  row('11507', 'Sweet potato, raw', 'sweet potato|sweet potatoes', 28, 'parings and trimmings'),
  row('11109', 'Cabbage, raw', 'cabbage|white cabbage', 20, 'outer leaves and core'),
  row('11098', 'Brussels sprouts, raw', 'brussels sprouts|sprouts', 10, 'outer leaves'),
  row('11233', 'Kale, raw', 'kale', 28, 'stem ends, tough stems and tough midrib parts'),
  row('11209', 'Eggplant, raw', 'aubergine|aubergines|eggplant|eggplants', 19, 'ends, parings and trimmings'),
  row('11167', 'Corn, sweet, yellow, raw', 'corn on the cob|sweetcorn cobs', 64, '35% husk, silk, trimmings; 29% cob'),
  row('11422', 'Pumpkin, raw', 'pumpkin', 30, 'seeds, rind and stem'),
  row('11216', 'Ginger root, raw', 'ginger|fresh ginger|root ginger', 7, 'scrapings'),
  row('09037', 'Avocados, raw', 'avocado|avocados', 26, 'seed and skin'),
  row('09003', 'Apples, raw, with skin', 'apple|apples', 10, 'core and stem'),
  row('09004', 'Apples, raw, without skin', 'peeled apple|peeled apples|cooking apples', 23, '10% core and stem, 13% skin'),
  row('09040', 'Bananas, raw', 'banana|bananas', 36, 'skin'),
  row('09200', 'Oranges, raw', 'orange|oranges', 27, 'peel and seeds'),
  row('09150', 'Lemons, raw, without peel', 'lemon|lemons', 47, '45% peel, 2% seeds'),
  row('09159', 'Limes, raw', 'lime|limes', 16, 'peel and seeds'),
  row('09266', 'Pineapple, raw', 'pineapple', 49, '8% core, 16% crown, 26% parings'),
  row('09176', 'Mangos, raw', 'mango|mangoes|mangos', 29, 'seeds and skin'),
  row('09181', 'Melons, cantaloupe, raw', 'cantaloupe|cantaloupe melon', 49, '9% cavity contents, 1% cutting loss, 39% rind'),
  row('09316', 'Strawberries, raw', 'strawberries', 6, 'caps and stems'),
  row('01123', 'Egg, whole, raw, fresh', 'egg|eggs', 12, 'shell'),
  row('15270', 'Crustaceans, shrimp, raw', 'prawns|shrimp|raw prawns|raw shrimp', 13, 'tail and shell; already without the head'),
  row('05006', 'Chicken, broilers or fryers, meat and skin, raw', 'whole chicken|chicken', 32, 'bone'),
  row('05165', 'Turkey, whole, meat and skin, raw', 'whole turkey|turkey', 29, 'bone and connective tissue'),
  row('17230', 'Lamb, leg, whole, trimmed to 1/8" fat, choice, raw', 'leg of lamb|lamb leg|bone-in leg of lamb', 22, 'bone'),
  row('13824', 'Beef, rib, whole, trimmed to 1/8" fat, raw', 'rib of beef|beef rib|bone-in rib of beef', 16, 'bone'),
]
