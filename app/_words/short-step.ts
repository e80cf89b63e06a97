import type { Kit } from '#lib/domain/kitchen.ts'
import { sentence } from './clock.ts'

/** Where a line may end and still be understood: before a clause or one of these words. */
const ENDS =
  /[,;:(]| (?:and then|and|or|then|with|without|until|till|for|in|into|inside|on|onto|at|over|under|to|from|through|while|when|so|by|as|between|behind|before|after) /g
const SMALL = /(?: (?:the|a|an|some|each|its|their|of|and|or|to|in|on|with))+$/i
const ARTICLES = /(?<= )(?:the|a|an|some of the|some) /gi
const HOW =
  /(?: (?:blind|whole|dry|slowly|gently|hard|uncovered|covered|well|thinly|finely|again|hot|cold|warm|soft|out|up|down|off|together|once|low|through|crisp|still))+$/i
const NAMED = /^\p{L}+(?: (?:out|up|down|off|slowly|gently|well))?(?: and \p{L}+)? (?:the|a|an|some|your) (.+)$/iu

const plain = (text: string): string => text.trim().replace(/[.;,]+$/, '')

/** The clauses a step can be told in, longest first, each at least a verb and what it is done to. */
const clauses = (does: string): readonly string[] => {
  const whole = plain(does)
  const cuts = [...whole.matchAll(ENDS)].map((match) => whole.slice(0, match.index).replace(SMALL, ''))
  const first = whole.split(/[,;:(]/)[0]?.trim() ?? whole
  const told = cuts.filter((cut) => cut.includes(' ') || cut === first)
  return [whole, ...[...new Set(told)].filter((cut) => cut.length >= 3 && cut !== whole).reverse()]
}

/** "Whisk eggs, cream and mustard, stir in the leeks" down to "Whisk eggs": each with its articles, then without. */
export const stepForms = (does: string): readonly string[] =>
  [...new Set(clauses(does).flatMap((clause) => [clause, clause.replace(ARTICLES, '')]))].sort((a, b) => b.length - a.length)

/** What a step is done to, "Bake the cases blind" → "cases"; null where the words do not say. */
export const thingOf = (does: string): string | null => {
  const last = clauses(does)
    .map((clause) => NAMED.exec(clause)?.[1])
    .findLast((thing) => thing !== undefined)
  return last?.replace(HOW, '').replace(ARTICLES, '') || null
}

/** The moment at which somebody comes to a step that is left alone. */
export type Moment = { readonly kind: 'in' | 'out' } | { readonly kind: 'every'; readonly does: string | undefined }

const PLACES: Readonly<Record<Kit['kind'] | 'none', readonly [begin: string, end: string]>> = {
  oven: ['in', 'out'],
  cold: ['in', 'out'],
  ring: ['on', 'off'],
  worktop: ['begin', 'ready'],
  tool: ['begin', 'ready'],
  none: ['begin', 'ready'],
}

/** As the end of a longer name: "Slow roast: in", "Simmer: stir". */
export const momentTag = (moment: Moment, place: Kit['kind'] | 'none'): string =>
  moment.kind === 'every' ? plain(moment.does ?? '') || 'check' : PLACES[place][moment.kind === 'in' ? 0 : 1]

/** A step in as few words as there is room for: `forms` longest first, and an end that is never cut. */
export interface Short {
  readonly forms: readonly string[]
  readonly tag: string
}

/** "Thighs in", "Rice off", "Stir the crumble": what a cook does at such a moment. */
export const momentShort = (does: string, moment: Moment, place: Kit['kind'] | 'none'): Short => {
  const tag = momentTag(moment, place)
  const thing = thingOf(does)
  if (thing === null) return { forms: stepForms(does), tag: `: ${tag}` }
  const short = thing.replace(/ of .*/, '')
  const things = [...new Set([thing, short])].map(sentence)
  if (moment.kind !== 'every') return { forms: things, tag: ` ${tag}` }
  if (tag.includes(' ')) return { forms: [...things.map((each) => `${each}: ${tag}`), sentence(tag)], tag: '' }
  return { forms: [`${sentence(tag)} the ${thing}`, `${sentence(tag)} the ${short}`, `${sentence(tag)} ${short}`], tag: '' }
}
