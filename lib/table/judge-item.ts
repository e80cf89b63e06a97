import type { Ingredient, Rules } from '#lib/domain/ingredient.ts'
import { alcoholKept } from './alcohol-kept.ts'
import { isAllergenTrait, isListed, RULES_SOURCE } from './allergen-rules.ts'
import type { Item } from './item.ts'
import { type Away, isAllergyGrade, isFor } from './need.ts'
import { type FoodReading, plainWords, readFood } from './read-food.ts'
import { type Trait, traitsOfWord, withParents } from './trait.ts'
import type { Because, Need } from './verdict.ts'

/** What an ingredient comes to for one need. */
export interface Judged {
  /** It has what is kept away from. */
  readonly wrong: readonly Because[]
  /** Somebody has to find out. */
  readonly open: readonly Because[]
  /** To be told, whatever comes of it. */
  readonly told: readonly Because[]
}

/** Said of it: its allergens, what it contains, and that it has alcohol. */
export const saidOf = (ingredient: Ingredient): ReadonlySet<Trait> =>
  withParents([
    ...ingredient.allergens,
    ...ingredient.contains.flatMap(traitsOfWord),
    ...((ingredient.abv ?? 0) > 0 ? (['alcohol'] as const) : []),
  ])

interface Look {
  readonly item: Item
  readonly need: Need
  readonly away: Away
  readonly rules: Rules
  readonly said: ReadonlySet<Trait>
  readonly read: FoodReading
  /** Its label names the need as met, and for this need that decides. */
  readonly isLabelled: boolean
}

const named = (food: string, need: string): boolean => {
  const [words, wanted] = [plainWords(food), plainWords(need)]
  return wanted.length > 0 && words.some((_, at) => wanted.every((word, index) => words[at + index] === word))
}

/** The traits of these that are in the set, without those of which a closer one is there too. */
const hits = (traits: readonly Trait[], of: { readonly has: (trait: Trait) => boolean }): Trait[] => {
  const found = traits.filter((trait) => of.has(trait))
  const broader = (trait: Trait) => found.some((other) => other !== trait && withParents([other]).has(trait))
  return found.filter((trait) => !broader(trait))
}

/** Oats whose label says gluten-free: most coeliacs eat them, some do not (Coeliac UK). */
const isOatsAlone = ({ item, away, said, read }: Look): boolean => {
  if (away.need !== 'gluten' || !isFor(item.ingredient.suits ?? [], 'gluten')) return false
  const cereals = [...said, ...read.has.keys()].filter((trait) => trait !== 'gluten' && withParents([trait]).has('gluten'))
  return cereals.length > 0 && cereals.every((trait) => trait === 'oats')
}

const wrongOf = (look: Look): Because[] => {
  const { item, need, away, said, read, isLabelled } = look
  if (isLabelled) return []
  const { ingredient } = item
  const has = (trait: Trait | null, by: 'said' | 'name', source = away.source): Because => ({
    kind: 'has',
    ingredient: ingredient.id,
    need: need.need,
    trait,
    by,
    source,
  })
  if (ingredient.contains.includes(need.need)) return [has(traitsOfWord(need.need)[0] ?? null, 'said')]
  if (away.traits.length === 0 && away.beyond) return named(ingredient.food, need.need) ? [has(null, 'name')] : []
  if (isOatsAlone(look)) return []
  // Little lactose is for the guest to say.
  if (away.ask.some((trait) => trait === 'little-lactose' && read.has.has(trait))) return []
  const bySaid = hits(away.traits, said).map((trait) => has(trait, 'said'))
  if (bySaid.length > 0) return bySaid
  // What nobody has made sure of is what its name says.
  const byName = ingredient.checked === 'known' ? [] : hits(away.traits, read.has)
  return byName.map((trait) => has(trait, 'name', read.has.get(trait)))
}

/** What is right only when it is cooked through. */
const rawOf = ({ item, need, away, said, read, isLabelled }: Look): Pick<Judged, 'wrong' | 'open'> => {
  const found = hits(away.raw, { has: (trait) => said.has(trait) || read.has.has(trait) })
  if (isLabelled || found.length === 0 || item.cooked === 'through') return { wrong: [], open: [] }
  const base = { ingredient: item.ingredient.id, need: need.need, source: away.source }
  return item.cooked === 'not'
    ? { wrong: found.map((trait) => ({ kind: 'has', ...base, trait, by: said.has(trait) ? 'said' : 'name' })), open: [] }
    : { wrong: [], open: found.map((trait) => ({ kind: 'cooked-through', ...base, trait })) }
}

const openOf = (look: Look): Because[] => {
  const { item, need, away, rules, said, read } = look
  const { ingredient } = item
  const base = { ingredient: ingredient.id, need: need.need }
  const isKnown = ingredient.checked === 'known'
  const labelRules = ingredient.labelRules ?? rules
  const isStrict = isAllergyGrade(need.grade)
  const isOwnWord = away.traits.length === 0
  const there = (trait: Trait) => said.has(trait) || read.has.has(trait)
  const found: Because[] = []
  for (const trait of hits(away.ask, { has: there }))
    found.push({ kind: 'ask-guest', ...base, trait, source: read.has.get(trait) ?? 'us-tree-nuts' })
  if (isOatsAlone(look)) found.push({ kind: 'ask-guest', ...base, trait: 'oats', source: 'coeliac-uk' })
  if (away.vague !== null && said.has(away.vague) && !isKindSaid(away, look))
    found.push({ kind: 'which', ...base, trait: away.vague })
  if (!look.isLabelled && !isFor(ingredient.suits ?? [], need.need)) {
    for (const trait of hits(away.hidden, { has: (one) => read.hidden.has(one) || (there(one) && !away.traits.includes(one)) }))
      found.push({ kind: 'hidden', ...base, trait, source: read.hidden.get(trait) ?? away.source })
    if (isKnown)
      for (const trait of hits(away.traits, read.has))
        if (!said.has(trait)) found.push({ kind: 'name-says', ...base, trait, source: read.has.get(trait) ?? away.source })
  }
  const may = [...away.traits, ...away.raw].filter((trait) => read.may.has(trait) && !said.has(trait))
  const doubtful = may.filter((trait) => !read.exempt.has(trait) || need.grade === 'severe')
  if (isKnown) {
    const silent = silentTrait(look, doubtful, labelRules)
    if (silent) found.push({ kind: 'silent', ...base, trait: silent, rules: labelRules, source: RULES_SOURCE[labelRules] })
    return found
  }
  // A leek is a leek: who only avoids something need not read a label that there is not.
  if (read.isPlain && !isStrict && !isOwnWord) return found
  const [first] = doubtful
  const source = (first && read.may.get(first)) ?? away.source
  return [...found, { kind: ingredient.checked === 'unknown' ? 'unknown' : 'label', ...base, look: doubtful, source }]
}

const isKindSaid = (away: Away, { said, read }: Look): boolean => {
  const kinds = [...said, ...read.has.keys()].filter(
    (trait) => trait !== away.vague && away.vague !== null && withParents([trait]).has(away.vague),
  )
  return kinds.length > 0
}

/** What the need keeps away from and a label under these rules does not have to name; a plain food has nothing that is not in its name. */
const silentTrait = ({ away, read }: Look, doubtful: readonly Trait[], labelRules: Rules): Trait | null => {
  const missing = (trait: Trait) => isAllergenTrait(trait) && !isListed(trait, labelRules)
  if (away.isAllergen && !read.isPlain) return away.traits.find(missing) ?? null
  return doubtful.find(missing) ?? null
}

/** What an ingredient comes to for one need under these rules. Unknown is never safe; a dislike minds only what is surely there. */
export const judgeItem = (item: Item, need: Need, away: Away, rules: Rules): Judged => {
  const { ingredient } = item
  const read = readFood(ingredient.food, rules)
  const isLabelled = away.labelDecides && (isFor(ingredient.suits ?? [], need.need) || claimsAll(read, away))
  const look: Look = { item, need, away, rules, said: saidOf(ingredient), read, isLabelled }
  const raw = rawOf(look)
  const wrong = [...wrongOf(look), ...raw.wrong]
  const told = wrong.some((each) => each.kind === 'has' && each.trait === 'alcohol') ? [keptOf(item, need)] : []
  if (need.grade === 'dislikes') return { wrong, open: [], told }
  return { wrong, open: wrong.length > 0 ? [] : [...raw.open, ...openOf(look)], told }
}

/** "Lactose-free milk": its name claims it. */
const claimsAll = (read: FoodReading, away: Away): boolean => away.need === 'lactose' && read.claims.has('milk')

const keptOf = ({ ingredient, heatMinutes }: Item, need: Need): Because => ({
  kind: 'alcohol-kept',
  ingredient: ingredient.id,
  need: need.need,
  ...alcoholKept(heatMinutes),
  source: 'usda-retention',
})
