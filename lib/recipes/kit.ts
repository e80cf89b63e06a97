import type { Found, KitWord } from './preview.ts'
import { phraseAt, phrases, type Token, tokenAt } from './tokens.ts'
import { verbAt } from './verbs.ts'

// The first that stands at a place wins. A word of heat alone ("simmer") means a ring as surely as a pan does; a verb that could be
// done elsewhere does not ("cook").
const LISTS: readonly (readonly [KitWord, boolean, readonly string[]])[] = [
  ['food processor', true, ['food processor']],
  ['mixer', true, ['electric mixer', 'stand mixer', 'hand mixer', 'electric whisk']],
  ['blender', true, ['stick blender', 'hand blender', 'blender', 'liquidiser']],
  ['blender', false, ['blend', 'blitz', 'whizz', 'puree', 'purée']],
  ['oven', true, ['oven', 'preheat']],
  ['oven', false, ['bake', 'roast']],
  ['grill', true, ['under the grill', 'hot grill', 'grill pan', 'broiler', 'broil', 'grill']],
  [
    'ring',
    true,
    [
      'frying pan',
      'saucepan',
      'skillet',
      'griddle',
      'over a low heat',
      'over a medium heat',
      'over a high heat',
      'over low heat',
      'over medium heat',
      'over medium-high heat',
      'over high heat',
      'over a gentle heat',
      'on the hob',
      'on the stove',
      'large pan',
      'deep pan',
      'wide pan',
      'casserole over',
    ],
  ],
  [
    'ring',
    false,
    [
      'simmer',
      'boil',
      'fry',
      'sauté',
      'saute',
      'sear',
      'sweat',
      'poach',
      'parboil',
      'blanch',
      'deep-fry',
      'stir-fry',
      'bubble',
      'brown',
      'melt',
    ],
  ],
  ['fridge', true, ['fridge', 'refrigerator', 'refrigerate', 'refrigerated']],
  ['fridge', false, ['chill']],
  ['freezer', true, ['freezer', 'freeze']],
  ['kettle', true, ['kettle']],
  ['sink', true, ['colander']],
  ['sink', false, ['drain', 'rinse']],
]

const WORDS = LISTS.map(([kit, certain, words]) => ({ kit, certain, words: phrases(...words) }))

const BEFORE_NOT = /^(from|out|of|the|off)$/

/** "out of the oven", "from the fridge", "off the heat": the thing is left, not taken up. */
const isLeft = (tokens: readonly Token[], at: number): boolean => {
  for (let i = at - 1; i >= at - 3; i -= 1) {
    const { low } = tokenAt(tokens, i)
    if (/^(from|out|off)$/.test(low)) return true
    if (!BEFORE_NOT.test(low)) return false
  }
  return false
}

/** The kit that a step's words speak of, each once, at its first mention. Not certain: inferred from what is done. */
export const kitIn = (tokens: readonly Token[]): readonly Found<KitWord>[] => {
  const found = new Map<KitWord, Found<KitWord>>()
  for (let at = 0; at < tokens.length; at += 1)
    for (const { kit, certain, words } of WORDS) {
      const length = phraseAt(tokens, at, words)
      if (!length || isLeft(tokens, at) || (!certain && !verbAt(tokens, at))) continue
      const before = found.get(kit)
      if (!before || (certain && !before.certain))
        found.set(kit, { value: kit, from: tokenAt(tokens, at).from, to: tokenAt(tokens, at + length - 1).to, certain })
      break
    }
  const ring = found.has('ring') || found.has('grill') ? null : watchedAt(tokens)
  if (ring) found.set('ring', ring)
  if (found.has('grill') && found.get('ring')?.certain === false) found.delete('ring')
  return [...found.values()]
}

/** "Soften the onions", "reheat gently": what wants an eye stands on a ring, unless it is the oven that is heated. */
const watchedAt = (tokens: readonly Token[]): Found<KitWord> | null => {
  for (const [at, { from, to, low }] of tokens.entries()) {
    const verb = verbAt(tokens, at)
    if (!verb || !('care' in verb) || verb.care !== 'eye') continue
    const oven = low.includes('heat') && tokens.slice(at + 1, at + 5).some((token) => /^(oven|grill|broiler)$/.test(token.low))
    if (!oven) return { value: 'ring', from, to, certain: false }
  }
  return null
}
