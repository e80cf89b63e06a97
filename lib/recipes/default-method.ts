import { durationOf } from '#lib/domain/duration.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { Touch, Way } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import type { DishDraft, NewKey, StepDraft } from './draft.ts'
import type { DecimalMark } from './preview.ts'

type Work = readonly [does: string, way: Way]

const MINUTE = 60
const HOUR = 3600

const touch = (when: 'in' | 'out'): Touch => ({ when, takes: 'PT1M', lateBy: when === 'in' ? 'PT0S' : 'PT2M' })
const way = (care: Way['care'], seconds: number, uses: readonly Use[]): Way => ({
  care,
  cooks: 1,
  takes: spanFromUsual(seconds),
  touches: care === 'leave' ? [touch('in'), touch('out')] : [],
  uses: [...uses],
})
const hands = (minutes: number): Way => way('hands-on', minutes * MINUTE, [{ kind: 'worktop', places: 1 }])
const oven = (seconds: number, lowC: number, highC: number): Way =>
  way('leave', seconds, [{ kind: 'oven', shelves: 1, lowC, highC, preheated: true }])
const ring = (minutes: number): Way => way('eye', minutes * MINUTE, [{ kind: 'ring', size: 'medium' }])
/** A joint rests out of the oven, and needs nobody. */
const rest = (minutes: number, most: number): Way => ({
  care: 'leave',
  cooks: 1,
  takes: { least: durationOf(minutes * MINUTE), likely: durationOf(minutes * MINUTE), most: durationOf(minutes * MINUTE) },
  upTo: durationOf(most * MINUTE),
  touches: [],
  uses: [],
})
const fridge: Way = {
  ...way('leave', 2 * HOUR, [{ kind: 'cold', keep: 'cold', places: 1 }]),
  takes: { least: 'PT2H', likely: 'PT2H', most: 'PT2H' },
  upTo: durationOf(24 * HOUR),
}

// Roast, and not a vegetable, a fruit or a fish: those are done sooner and do not rest. Nor what is made of a roast.
const SMALL =
  /\b(?:potato(?:es)?|parsnips?|carrots?|squash|pumpkin|roots?|veg(?:etables?|gies)?|peppers?|tomato(?:es)?|cauliflower|broccoli|sprouts|beetroots?|beets?|celeriac|fennel|aubergines?|courgettes?|onions?|shallots?|leeks?|garlic|mushrooms?|cabbage|swede|turnips?|asparagus|corn|artichokes?|chickpeas|beans|greens|peach(?:es)?|plums?|apples?|pears?|rhubarb|figs?|fruit|apricots?|grapes?|pineapple|nuts|almonds|hazelnuts|chestnuts|cod|salmon|fish|hake|turbot|halibut|monkfish|trout|bass|bream|mackerel|prawns|scallops|tofu|cheese|feta)\b/iu
const MADE_OF =
  /\b(?:salad|slaw|soup|broth|sandwich(?:es)?|sauce|gravy|butter|risotto|pasta|curry|pie|tart|stew|casserole|terrine|coffee)\b/iu
const SLOW = /\b(?:shoulder|belly|brisket|shanks?|short ribs?|shin|cheeks?|oxtail|slow)\b/iu
const JOINT = /\b(?:chicken|duck|goose|turkey|beef|lamb|pork|venison|joint|rib|leg|rack|loin|saddle)\b/iu
const BIRD = /\b(?:guinea ?fowl|guinea hen|pheasant|partridge|grouse|pigeon|poussin|capon|cockerel|whole bird)s?\b/iu
const ROASTED: readonly Work[] = [
  ['Prepare', hands(15)],
  ['Roast', oven(HOUR, 180, 200)],
  ['Rest', rest(15, 40)],
]

/** Roast in so many words, of which none says more. */
const isRoast = (name: string): boolean => {
  if (!/\broast(?:ed)?\b/iu.test(name) || SLOW.test(name) || MADE_OF.test(name)) return false
  return JOINT.test(name) || BIRD.test(name) || !SMALL.test(name)
}

// What a dish's name says of how it is made; common practice, no source, and each to be corrected. The first that fits counts.
const MANNERS: readonly (readonly [RegExp, readonly Work[]])[] = [
  [
    /\b(?:posset|panna cotta|mousse|jelly|trifle|parfait|semifreddo|tiramis[uù]|fool|cheesecake|terrine|p[aâ]t[eé]|gravlax|cured)\b/iu,
    [
      ['Make', hands(20)],
      ['Chill', fridge],
    ],
  ],
  [
    /\b(?:salad|slaw|cheeses?|cheeseboard|oysters|carpaccio|tartare|ceviche|sorbet|ice cream|gelato|olives|nuts|crudit[eé]s|radishes|crisps|fruit|berries|figs|melon|charcuterie|ham|bread|butter|pickles?|chocolates?|truffles)\b/iu,
    [['Get ready', hands(10)]],
  ],
  [
    /\b(?:soup|broth|chowder|risotto|pasta|spaghetti|noodles|curry|poached|fried|steamed|boiled|mash(?:ed)?|buttered|peas|beans|greens|spinach|rice|couscous|polenta|lentils|dal|sauce|gravy|custard|omelette|steaks?|mussels|clams|scallops|prawns|pancakes|crepes|compote)\b/iu,
    [
      ['Prepare', hands(10)],
      ['Cook', ring(20)],
    ],
  ],
  [
    /\b(?:daube|stew|casserole|braised?|slow-cooked)\b/iu,
    [
      ['Prepare', hands(15)],
      ['Braise', { ...oven(3 * HOUR, 140, 160), upTo: 'PT4H30M' }],
    ],
  ],
  [
    SLOW,
    [
      ['Prepare', hands(15)],
      ['Slow roast', oven(3 * HOUR, 140, 160)],
      ['Rest, wrapped', rest(20, 60)],
    ],
  ],
  [
    JOINT,
    [
      ['Prepare', hands(15)],
      ['Roast', oven(75 * MINUTE, 180, 200)],
      ['Rest', rest(15, 40)],
    ],
  ],
  [BIRD, ROASTED],
  [
    /\b(?:roast(?:ed)?|baked?|gratin|dauphinoise|tart|pie|cakes?|crumble|cobbler|pudding|lasagne|moussaka|quiche|souffl[eé]s?|shortbread|biscuits|cookies|brownies|wellington|pastries|focaccia|pizza|potatoes)\b/iu,
    [
      ['Prepare', hands(15)],
      ['Roast or bake', oven(45 * MINUTE, 180, 200)],
    ],
  ],
]

const UNKNOWN: readonly Work[] = [['Make', hands(20)]]

/** A method for a dish of which nothing but its name is known, so that there can be an order at once: every step says that it is assumed. */
export const defaultDraft = (name: string, decimal: DecimalMark, newKey: NewKey): DishDraft => {
  const works = isRoast(name) ? ROASTED : (MANNERS.find(([words]) => words.test(name))?.[1] ?? UNKNOWN)
  return {
    name,
    yields: null,
    ingredients: [],
    steps: works.map(
      ([does, way]): StepDraft => ({
        key: newKey(),
        text: `${does}: ${name}`,
        section: null,
        way,
        until: {},
        assumed: ['no-recipe'],
        doubts: [],
        aside: [],
      }),
    ),
    unused: [],
    guess: null,
    asksMeasures: false,
    measures: null,
    decimal,
    bare: 'C',
    source: null,
    cutShort: false,
  }
}
