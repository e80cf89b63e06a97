import { fail, ok, type Result } from '#lib/domain/result.ts'
import { commonYield, type EveningFacts, readFacts } from './evening-facts.ts'
import { readMenu } from './menu.ts'
import type { DecimalMark, RecipePreview } from './preview.ts'
import { LONGEST_PAGE, LONGEST_TEXT, readRecipe, type Unread } from './read.ts'
import { splitPaste } from './split-paste.ts'

/** A dish that a paste names or has a recipe for. */
export interface PastedDish {
  readonly name: string
  /** Which of the recipes is its, or null. */
  readonly recipe: number | null
  /** How it came here: named as such; cut out of a longer phrase; by its recipe alone, of which the pasted menu says nothing. */
  readonly by: 'name' | 'cut' | 'recipe'
}

/** A course of a pasted menu, with its dishes. */
export interface PastedCourse {
  readonly name: string
  readonly welcome: boolean
  readonly dishes: readonly PastedDish[]
}

/** A menu, recipes, or both, put together; to be corrected by a person. */
export interface ReadPaste {
  readonly courses: readonly PastedCourse[]
  readonly recipes: readonly RecipePreview[]
  /** Lines that are neither. */
  readonly leftOver: readonly string[]
  /** What is said of the evening itself, beside the menu; for how many also by recipes that agree. */
  readonly facts: EveningFacts
}

/** The most recipes that one paste may hold. */
export const MOST_RECIPES = 40

const EMPTY = new Set(['with', 'and', 'the', 'for', 'our', 'from', 'some', 'served', 'recipe', 'easy', 'best'])

/** The words that tell a dish from another, without their plurals. */
const wordsOf = (name: string): ReadonlySet<string> =>
  new Set(
    name
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .filter((word) => word.length > 2 && !EMPTY.has(word))
      .map((word) => word.replace(/(?:es|s)$/u, '')),
  )

const likeness = (a: ReadonlySet<string>, b: ReadonlySet<string>): number => {
  const common = [...a].filter((word) => b.has(word)).length
  return common === 0 ? 0 : common / Math.min(a.size, b.size)
}

/** Two of three words, or the one that there is. */
const ALIKE = 0.6

/** Which of some dishes a recipe's title names, by its place in the list; null for none. */
export const likest = (title: string, dishes: readonly string[]): number | null => {
  const own = wordsOf(title)
  const scores = dishes.map((dish) => likeness(own, wordsOf(dish)))
  const best = Math.max(0, ...scores)
  return best >= ALIKE ? scores.indexOf(best) : null
}

interface Slot {
  readonly course: number
  readonly dish: number
  readonly words: ReadonlySet<string>
}

/** Which recipe is which dish's: the likest pairs first, each once. */
const pairUp = (slots: readonly Slot[], titles: readonly ReadonlySet<string>[]): ReadonlyMap<Slot, number> => {
  const pairs = slots
    .flatMap((slot) => titles.map((title, recipe) => ({ slot, recipe, score: likeness(slot.words, title), size: title.size })))
    .filter((pair) => pair.score >= ALIKE)
    .sort((a, b) => b.score - a.score || b.slot.words.size - a.slot.words.size || a.recipe - b.recipe)
  const found = new Map<Slot, number>()
  const used = new Set<number>()
  for (const { slot, recipe } of pairs) {
    if (found.has(slot) || used.has(recipe)) continue
    found.set(slot, recipe)
    used.add(recipe)
  }
  return found
}

interface Open {
  name: string
  welcome: boolean
  dishes: PastedDish[]
}

const ALONE: readonly (readonly string[])[] = [['Main'], ['Starter', 'Main'], ['Starter', 'Main', 'Dessert']]

/** Recipes without a menu: courses by the order of the paste, one each. */
const coursesOf = (count: number): Open[] =>
  Array.from({ length: count }, (_, i) => ({ name: ALONE[count - 1]?.[i] ?? `Course ${i + 1}`, welcome: false, dishes: [] }))

/** Reads what a person pasted at the beginning: a menu, recipes, or both. Refuses what is too long or has nothing in it. */
export const readPaste = (text: string, decimal: DecimalMark): Result<ReadPaste, Unread> => {
  if (text.length > LONGEST_PAGE) return fail({ kind: 'too-long', most: LONGEST_PAGE })
  const isData = /^\s*[[{<]/u.test(text)
  if (!isData && text.length > LONGEST_TEXT) return fail({ kind: 'too-long', most: LONGEST_TEXT })
  const { menu, recipes: texts } = splitPaste(text, decimal)
  const leftOver: string[] = []
  const read: { preview: RecipePreview; heading: (typeof texts)[number]['heading'] }[] = []
  for (const { text: own, heading } of texts.slice(0, MOST_RECIPES)) {
    const one = readRecipe(own, { decimal })
    if (one.ok) read.push({ preview: one.value, heading })
    else if (one.error.kind !== 'nothing' || texts.length === 1) return one
    else leftOver.push(own)
  }
  leftOver.push(...texts.slice(MOST_RECIPES).map((each) => each.text.slice(0, 300)))
  const named = readMenu(menu)
  leftOver.unshift(...named.leftOver.map((line) => line.text))
  const facts = readFacts(named.leftOver.map((line) => line.text))
  const titles = read.map(({ preview }) => wordsOf(preview.title ?? ''))
  const slots = named.courses.flatMap((course, c) =>
    course.dishes.map((dish, d): Slot => ({ course: c, dish: d, words: wordsOf(dish.value) })),
  )
  const pairs = pairUp(slots, titles)
  const courses: Open[] = named.courses.map((course, c) => ({
    name: course.name,
    welcome: course.welcome,
    dishes: course.dishes.map((dish, d): PastedDish => {
      const slot = slots.find((each) => each.course === c && each.dish === d)
      return { name: dish.value, recipe: slot ? (pairs.get(slot) ?? null) : null, by: dish.certain ? 'name' : 'cut' }
    }),
  }))
  const alone = [...read.keys()].filter((recipe) => ![...pairs.values()].includes(recipe))
  const free = courses.length === 0 && read.every(({ heading }) => heading === null) ? coursesOf(read.length) : null
  courses.push(...(free ?? []))
  for (const recipe of alone) {
    const { preview, heading } = read[recipe] ?? {}
    const dish: PastedDish = { name: preview?.title ?? '', recipe, by: 'recipe' }
    if (free) free[recipe]?.dishes.push({ ...dish, by: 'name' })
    else {
      const name = heading?.name ?? 'Main'
      let course =
        courses.find((each) => each.name.toLowerCase() === name.toLowerCase()) ?? (heading ? undefined : courses.at(-1))
      if (!course) {
        course = { name, welcome: (heading?.welcome ?? false) && courses.every((each) => !each.welcome), dishes: [] }
        courses.push(course)
      }
      course.dishes.push(heading ? { ...dish, by: 'name' } : dish)
    }
  }
  if (courses.length === 0) return fail({ kind: 'nothing' })
  return ok({
    courses: courses.map(withoutCovered(read.map(({ preview }) => preview))),
    recipes: read.map(({ preview }) => preview),
    leftOver,
    facts: { ...facts, covers: facts.covers ?? commonYield(read.map(({ preview }) => preview)) },
  })
}

/** "roast potatoes", cut out of "lamb with roast potatoes", is no dish beside the recipe "Lamb with roast potatoes". */
const withoutCovered =
  (recipes: readonly RecipePreview[]) =>
  (course: Open): PastedCourse => ({
    ...course,
    dishes: course.dishes.filter((dish, at) => {
      if (dish.by !== 'cut' || dish.recipe !== null) return true
      const head = course.dishes.slice(0, at).findLast((other) => other.recipe !== null)
      const title = wordsOf(head?.recipe === undefined || head.recipe === null ? '' : (recipes[head.recipe]?.title ?? ''))
      const words = [...wordsOf(dish.name)]
      return words.length === 0 || !words.every((word) => title.has(word))
    }),
  })
