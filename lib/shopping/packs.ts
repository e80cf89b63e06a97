import Fraction from 'fraction.js'
import { foodKey } from './food-key.ts'
import type { Exact } from './wanted.ts'

/** A size that a food is mostly sold in, in the line's unit. */
export interface Pack {
  readonly n: Exact
  readonly unit: string
}

// Common practice, no source: shops of each country have their own, and every line's can be changed.
const GRAMS: readonly (readonly [string, number])[] = [
  [
    'flour|plain flour|wheat flour|plain wheat flour|white flour|self-raising flour|bread flour|strong flour|strong white flour|wholemeal flour|rye flour',
    1000,
  ],
  ['sugar|granulated sugar|caster sugar|demerara sugar', 1000],
  ['icing sugar|brown sugar|light brown sugar|dark brown sugar|muscovado sugar', 500],
  ['butter|unsalted butter|salted butter', 250],
  ['rice|long-grain rice|basmati rice|risotto rice|pudding rice', 1000],
  ['pasta|spaghetti|penne|macaroni|lasagne sheet|couscous|lentil|red lentil|green lentil|bulgur|polenta|oat|rolled oat', 500],
  ['bacon|streaky bacon|feta|mozzarella|ricotta|mascarpone|cream cheese', 250],
  ['dark chocolate|milk chocolate|chocolate|almond|ground almond|flaked almond|hazelnut|walnut', 100],
  ['honey|jam', 340],
  ['salt|sea salt', 750],
  ['yogurt|yoghurt|plain yoghurt|natural yoghurt', 500],
  ['tofu', 280],
]
const MILLILITRES: readonly (readonly [string, number])[] = [
  ['milk|whole milk|semi-skimmed milk|oat milk|soya milk', 1000],
  ['cream|double cream|single cream|whipping cream|sour cream|soured cream|crème fraîche|creme fraiche', 300],
  [
    'oil|olive oil|extra virgin olive oil|vegetable oil|sunflower oil|rapeseed oil|vinegar|red wine vinegar|white wine vinegar|cider vinegar',
    500,
  ],
  ['stock|chicken stock|vegetable stock|beef stock|fish stock', 500],
  ['coconut milk', 400],
  ['red wine|white wine|dry white wine|wine|port|sherry|brandy', 750],
  ['orange juice|apple juice', 1000],
  ['soy sauce', 150],
]
const PIECES: readonly (readonly [string, number])[] = [['egg|large egg|medium egg|small egg', 6]]

const TABLE: ReadonlyMap<string, Pack> = new Map(
  (
    [
      ['g', GRAMS],
      ['ml', MILLILITRES],
      ['', PIECES],
    ] as const
  ).flatMap(([unit, rows]) =>
    rows.flatMap(([names, n]) => names.split('|').map((name) => [`${name} ${unit}`, { n: new Fraction(n), unit }] as const)),
  ),
)

/** The pack that a food mostly comes in, counted like the line; null where it is sold loose or nothing is known. */
export const usualPack = (food: string, unit: string): Pack | null => TABLE.get(`${foodKey(food)} ${unit}`) ?? null

/** How many packs hold the amount. */
export const packsFor = (amount: Exact, pack: Pack): number => amount.div(pack.n).ceil().valueOf()
