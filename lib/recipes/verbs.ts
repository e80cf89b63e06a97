import type { Care } from '#lib/domain/menu.ts'
import type { WaitHow } from './preview.ts'
import { type Token, tokenAt } from './tokens.ts'

const listed = <T>(lists: readonly (readonly [T, string])[]): ReadonlyMap<string, T> =>
  new Map(lists.flatMap(([value, words]) => words.split(' ').map((word) => [word, value] as const)))

/** Words that leave food to itself, and how. */
const WAITS: ReadonlyMap<string, WaitHow> = listed([
  ['rest', 'wait rest rests rested resting stand stands standing sit sits leave leaves left leaving aside'],
  ['chill', 'chill chills chilled chilling refrigerate refrigerated fridge refrigerator'],
  ['freeze', 'freeze freezes freezer'],
  ['cool', 'cool cools cooled cooling'],
  ['marinate', 'marinate marinates marinated marinade marinating cure cured curing brine brined brining'],
  ['soak', 'soak soaks soaked soaking steep steeped infuse infused infusing'],
  ['rise', 'rise rises risen rising prove proves proved proving proof proofed proofing ferment'],
])

/** Words of work, and what they ask of a cook. */
const WORKS: ReadonlyMap<string, Care> = listed<Care>([
  [
    'hands-on',
    'chop chopped dice slice peel grate mince crush trim core stone halve quarter shred zest squeeze mix stir whisk beat knead fold cream rub roll shape form cut carve pour spread brush toss season layer assemble fill stuff press mash blend blitz puree purée whip sift combine sear brown flip drain rinse wash scrape strain plate spoon ladle dress scatter sprinkle divide line butter grease skim pipe wrap turn whizz process pulse shell pick tear crumble spatchcock tie score pat dissolve',
  ],
  [
    'eye',
    'simmer boil fry saute sauté sweat soften bubble reduce poach steam grill broil melt toast reheat heat warm cook caramelise caramelize scald deep-fry stir-fry parboil blanch wilt char griddle',
  ],
  ['leave', 'bake roast braise stew slow-roast confit'],
])

// These name things as often as they say what to do: "the rest", "cream", "a stand mixer", "the warm pan".
const NOUNS = new Set(
  'puree purée rest stand left leaves rise proof proofs cure brine marinade cream butter core stone line quarter grill press roll layer dress score wrap pipe char plate crush brown warm season fold stew toast spoon ladle cut slice dice mix shell crumble mash zest peel fill spread shape form turn scrape whip pat process steam reduce top heat cook'.split(
    ' ',
  ),
)
const THINGS = /^(tin|tray|dish|pan|rack|board|bowl|sheet|paper|time|juices|liquid)$/
const BEFORE_VERB =
  /^([.,;:(!?+&–—-]|and|then|to|or|let|must|should|it|them|be|gently|briefly|lightly|slowly|just|now|again|well|leave)?$/

/** Whether a word that may be a thing is here something to do: it begins a clause, or "to", "and" or "let" stands before it. */
const isDone = (tokens: readonly Token[], at: number): boolean => {
  const { low } = tokenAt(tokens, at)
  const [before, after] = [tokenAt(tokens, at - 1).low, tokenAt(tokens, at + 1).low]
  if (after === 'mixer' || after === 'of') return false
  // "Let the dough rest", "the batter should stand": only an article makes a thing of it.
  if (/^(rest|stand|rise|steam|cook|reduce|brown)$/.test(low)) return !/^(the|a|an|this|that)$/.test(before)
  return BEFORE_VERB.test(before)
}

/** What a word at a place asks: work, by the care it needs, or waiting, by how; null when it is no such word, or a thing here. */
export const verbAt = (tokens: readonly Token[], at: number): { readonly care: Care } | { readonly wait: WaitHow } | null => {
  const { low } = tokenAt(tokens, at)
  // "simmering", "baking": the same word at work.
  const stem = low.endsWith('ing') ? low.slice(0, -3) : low
  const wait = WAITS.get(low)
  const care = WORKS.get(low) ?? WORKS.get(stem) ?? WORKS.get(`${stem}e`)
  if (wait === undefined && care === undefined) return null
  // "Before cooking", "a roasting tin", "the cooling rack".
  if (
    stem !== low &&
    (/^(before|for|after|a|the|of)$/.test(tokenAt(tokens, at - 1).low) || THINGS.test(tokenAt(tokens, at + 1).low))
  )
    return null
  if (NOUNS.has(low) && !isDone(tokens, at)) return null
  if (wait !== undefined) return { wait }
  // "Drain and leave to steam": nobody does anything.
  const left = tokenAt(tokens, at - 1).low === 'to' && /^(leave|left|aside)$/.test(tokenAt(tokens, at - 2).low)
  if (left && /^(steam|drain|dry|firm|set)$/.test(low)) return { wait: 'rest' }
  return care === undefined ? null : { care }
}
