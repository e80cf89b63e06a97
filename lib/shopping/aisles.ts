/** Where in a shop a thing stands. Our own walk round a shop: common practice, no source; each line's own word goes before it. */
export const AISLES = [
  'produce',
  'bakery',
  'fish',
  'meat',
  'dairy',
  'cupboard',
  'spices',
  'frozen',
  'drinks',
  'ice',
  'other',
] as const
export type AisleKind = (typeof AISLES)[number]

const word = (words: string): RegExp => new RegExp(`\\b(?:${words})\\b`, 'i')

// The first that fits: "tinned tomatoes" are no vegetables, "fish sauce" is no fish, "coconut milk" no milk.
const ROWS: readonly (readonly [AisleKind, RegExp])[] = [
  ['frozen', word('frozen|ice cream|sorbet')],
  ['ice', /^ice( cubes?)?$/i],
  [
    'cupboard',
    word(
      'tins?|tinned|cans?|canned|jars?|dried fruit|stock cubes?|stock|bouillon|broth|passata|pur[ée]e|paste|sauce|ketchup|coconut milk|coconut cream|coconut|oil|vinegar|flour|cornflour|starch|sugar|syrup|treacle|honey|jam|marmalade|chutney|rice|pasta|spaghetti|penne|lasagne|macaroni|noodles?|couscous|bulgur|quinoa|polenta|semolina|oats|oatmeal|barley|lentils?|chickpeas|split peas|dried beans|butter beans|haricot beans|baking powder|bicarbonate|baking soda|yeast|gelatine?|chocolate|cocoa|nuts?|almonds?|hazelnuts?|walnuts?|pistachios?|pecans?|cashews?|peanuts?|pine nuts|seeds|raisins|sultanas|currants|prunes|dates|dried|olives|capers|gherkins?|pickles?|anchov(?:y|ies)|mustard|mayonnaise|crackers?|biscuits?|breadcrumbs|crispbread|tea|coffee|peanut butter|tahini|wafers?|sponge fingers',
    ),
  ],
  [
    'spices',
    word(
      'salt|pepper|peppercorns?|paprika|cumin|coriander seeds?|ground coriander|turmeric|cinnamon|nutmeg|mace|cloves|cardamom|allspice|star anise|saffron|caraway|juniper|bay lea(?:f|ves)|vanilla|curry powder|garam masala|fennel seeds?|mustard seeds?|chilli flakes|chili flakes|chilli powder|spices?|sumac|ground ginger|oregano|mixed herbs',
    ),
  ],
  [
    'fish',
    word(
      'fish|salmon|trout|cod|hake|haddock|halibut|mackerel|tuna|bass|bream|sole|plaice|turbot|monkfish|herring|sardines?|prawns?|shrimps?|langoustines?|crab|lobster|mussels?|clams?|cockles?|oysters?|scallops?|squid|octopus|roe|caviar',
    ),
  ],
  [
    'meat',
    word(
      'meat|chicken|turkey|duck|goose|poussin|quail|guinea fowl|pheasant|beef|veal|lamb|mutton|pork|ham|bacon|pancetta|prosciutto|chorizo|salami|sausages?|mince|liver|livers|kidneys?|rabbit|venison|game|oxtail|steaks?|chops?|ribs?|lard|suet|dripping|bones',
    ),
  ],
  [
    'dairy',
    word(
      'milk|cream|cr[èe]me fra[îi]che|yogh?urt|butter|ghee|cheese|cheddar|parmesan|pecorino|ricotta|mozzarella|feta|mascarpone|halloumi|paneer|gruy[èe]re|quark|curd|buttermilk|eggs?|yolks?|whites?|custard|tofu|margarine|puff pastry|shortcrust pastry|filo(?: pastry)?|pastry',
    ),
  ],
  [
    'bakery',
    word(
      'bread|flat ?breads?|loaf|baguettes?|rolls?|buns?|ciabatta|focaccia|sourdough|rye|pitta|naan|brioche|toast|croissants?|cake',
    ),
  ],
  [
    'drinks',
    word(
      'wine|beer|cider|ale|stout|champagne|prosecco|vodka|gin|rum|brandy|whisky|port|sherry|vermouth|liqueur|juice|cordial|tonic|lemonade|soda water|sparkling water',
    ),
  ],
  [
    'produce',
    word(
      'apples?|pears?|quinces?|plums?|cherr(?:y|ies)|peach(?:es)?|apricots?|nectarines?|rhubarb|figs?|berr(?:y|ies)|\\w+berr(?:y|ies)|bananas?|mango(?:es)?|grapes?|oranges?|clementines?|lemons?|limes?|grapefruits?|melons?|watermelons?|pineapples?|pomegranates?|zest|onions?|shallots?|garlic|leeks?|chives|carrots?|parsnips?|celeriac|celery|beetroots?|beets?|swedes?|turnips?|radish(?:es)?|potato(?:es)?|sweet potato(?:es)?|artichokes?|asparagus|broccoli|cauliflowers?|cabbages?|kale|sprouts?|chard|fennel|aubergines?|courgettes?|peppers?|chill?i(?:es)?|chill?is|squash|pumpkins?|cucumbers?|mushrooms?|beans|peas|mangetout|sweetcorn|ginger|parsley|thyme|rosemary|sage|mint|basil|dill|tarragon|coriander|chervil|marjoram|herbs?|chicory|radicchio|avocados?|tomato(?:es)?|lettuces?|spinach|rocket|watercress|cress|salad|leaves|endive|samphire|horseradish|flowers',
    ),
  ],
]

/** Where it stands by its name; "other" where its name says nothing. */
export const aisleOf = (food: string): AisleKind => {
  const name = food.split(/,(?!\d)|[(;]/)[0] ?? food
  return ROWS.find(([, words]) => words.test(name))?.[0] ?? 'other'
}

const KEPT = word('smoked|cured|tinned|tin|canned|dried|salted|potted|pickled|ham|bacon|pancetta|prosciutto|chorizo|salami')
const SOON = word('chicken|turkey|duck|goose|poussin|quail|guinea fowl|pheasant|mince|minced|ground|livers?|kidneys?')

/**
 * For how many days before it is used it may be bought and kept in the fridge; null: longer than shopping is planned for. Fish, shellfish,
 * bread and ice are bought on the day (common practice). Poultry, mince and offal one day: the lower of the one to two days of the USDA FSIS
 * FoodKeeper data (rows 43, 73, 113, 115, 116; offal by the same practice); fish is 1 to 2 there (rows 144, 146).
 */
export const keepsDays = (food: string): 0 | 1 | null => {
  const aisle = aisleOf(food)
  if (aisle === 'frozen' || KEPT.test(food)) return null
  if (aisle === 'fish' || aisle === 'bakery' || aisle === 'ice') return 0
  return aisle === 'meat' && SOON.test(food) ? 1 : null
}
