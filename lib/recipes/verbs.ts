import type { WaitHow } from './preview.ts'

const listed = <T>(lists: readonly (readonly [T, string])[]): ReadonlyMap<string, T> =>
  new Map(lists.flatMap(([value, words]) => words.split(' ').map((word) => [word, value] as const)))

/** Words that leave food to itself, and how. */
export const WAITS: ReadonlyMap<string, WaitHow> = listed([
  ['rest', 'rest rests rested resting stand stands standing sit sits leave leaves left leaving aside'],
  ['chill', 'chill chills chilled chilling refrigerate refrigerated fridge refrigerator'],
  ['freeze', 'freeze freezes freezer'],
  ['cool', 'cool cools cooled cooling'],
  ['marinate', 'marinate marinates marinated marinade marinating cure cured curing brine brined brining'],
  ['soak', 'soak soaks soaked soaking steep steeped infuse infused infusing'],
  ['rise', 'rise rises risen rising prove proves proved proving proof proofed proofing ferment'],
])

export type Care = 'hands-on' | 'eye' | 'leave'

/** Words of work, and what they ask of a cook. */
export const WORKS: ReadonlyMap<string, Care> = listed<Care>([
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

/** Words that say how long something keeps. */
export const KEEPS = new Set(['keep', 'keeps', 'store', 'stores', 'stored', 'kept', 'eat', 'serve', 'use', 'within'])
