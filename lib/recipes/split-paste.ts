import { dataInText } from './data-in-text.ts'
import { isOfEvening } from './evening-facts.ts'
import { readMenu } from './menu.ts'
import { type PlainLine, plainLine } from './plain-line.ts'
import type { DecimalMark } from './preview.ts'

/** A course that stands over a recipe or before its title ("Starter", "Main: …"). */
export interface CourseHeading {
  readonly name: string
  readonly welcome: boolean
}

/** The stretch of a paste that is one recipe. */
export interface PastedRecipe {
  readonly text: string
  readonly heading: CourseHeading | null
}

/** One paste, cut where a menu ends and each recipe begins. */
export interface PieceOfPaste {
  readonly menu: string
  readonly recipes: readonly PastedRecipe[]
}

interface Line {
  readonly text: string
  readonly is: PlainLine
}

const RULE = /^\s*(?:[-=*_~#—–]\s*){3,}$/u
const LONGEST_TITLE = 80
/** How many lines a title may stand above the first line of ingredients, blank ones aside. */
const INTRO = 6
/** A list is two lines; one line with a number may be anything. */
const LIST = 2
const AHEAD = 10

const headingOf = (text: string): { heading: CourseHeading; rest: string } | null => {
  const { courses } = readMenu(text)
  const [course, second] = courses
  if (!course || second || course.name === 'Course 1') return null
  const rest = text.slice(text.search(/[:–—-]/u) + 1).trim()
  return { heading: { name: course.name, welcome: course.welcome }, rest: course.dishes.length > 0 ? rest : '' }
}

const isTitle = ({ text, is }: Line): boolean =>
  is.kind === 'words' && !is.amount && !is.sentence && text.trim().length <= LONGEST_TITLE

/** Whether a line says what a recipe needs or for how many it is. */
const isNeed = ({ is }: Line): boolean =>
  is.kind === 'ingredients-heading' || (is.kind === 'words' && is.amount) || (is.kind === 'facts' && is.yields !== null)

const isStep = ({ is }: Line): boolean =>
  is.kind === 'numbered' || is.kind === 'method-heading' || (is.kind === 'words' && is.sentence && !is.amount)

const isBareHeading = (line: Line): boolean => headingOf(line.text.trim())?.rest === ''

/** The title above a list of needs: over facts, headings and an introduction, no further than the last recipe's method; -1 for none. */
const titleAbove = (lines: readonly Line[], at: number, floor: number): number => {
  let seen = 0
  for (let i = at - 1; i >= floor && seen <= INTRO; i -= 1) {
    const line = lines[i]
    if (!line || line.is.kind === 'numbered' || (line.is.kind === 'words' && line.is.amount) || isBareHeading(line)) return -1
    if (isTitle(line)) {
      // A line about the dish may stand below its name.
      const above = lines[i - 1]
      const more = i > floor && above !== undefined && isTitle(above) && headingOf(above.text.trim()) === null
      return more && headingOf(line.text.trim()) === null ? titleAbove(lines, i, floor) : i
    }
    if (line.is.kind !== 'blank') seen += 1
  }
  return -1
}

const needsFrom = (lines: readonly Line[], at: number): number => {
  let count = 0
  for (const line of lines.slice(at, at + AHEAD)) {
    if (isNeed(line)) count += 1
    else if (isStep(line)) break
  }
  return count
}

/** Where each recipe begins: its title, or its first need when it has none. */
const recipeStarts = (lines: readonly Line[]): readonly number[] => {
  const starts: number[] = []
  // Behind the last line of the method so far; -1 while the recipe has none.
  let method = -1
  for (const [at, line] of lines.entries()) {
    const open = starts.length > 0
    if (isNeed(line) && (!open || method >= 0) && needsFrom(lines, at) >= LIST) {
      const title = titleAbove(lines, at, open ? method : 0)
      const apart = title > 0 && lines[title - 1]?.is.kind === 'blank'
      const under = title > 0 && headingOf(lines[title - 1]?.text ?? '') !== null
      if (!open || (title >= 0 && (apart || under))) {
        starts.push(title >= 0 ? title : at)
        method = -1
        continue
      }
    }
    // A wrapped line of a step is a step's too, but a title after it is not: only what is surely of the method moves the floor.
    if (open && isStep(line)) method = at + 1
  }
  return starts
}

const isMethodAlone = (lines: readonly Line[]): boolean =>
  lines.some((line) => line.is.kind === 'numbered' || line.is.kind === 'method-heading') ||
  lines.filter((line) => line.is.kind === 'words' && line.is.sentence && line.text.length > 60).length >= 2

const joined = (lines: readonly Line[]): string =>
  lines
    .map((line) => line.text)
    .join('\n')
    .trim()

/** The line before a recipe when it is a course's heading and nothing else. */
const headingBefore = (lines: readonly Line[], start: number): { at: number; heading: CourseHeading } | null => {
  let at = start - 1
  while (at >= 0 && lines[at]?.is.kind === 'blank') at -= 1
  const found = at >= 0 ? headingOf(lines[at]?.text.trim() ?? '') : null
  return found && found.rest === '' ? { at, heading: found.heading } : null
}

const splitLines = (lines: readonly Line[]): PieceOfPaste => {
  const found = recipeStarts(lines)
  const starts = found.length === 0 && isMethodAlone(lines) ? [0] : found
  const begins = starts.map((start) => headingBefore(lines, start)?.at ?? start)
  const recipes = starts.map((start, i): PastedRecipe => {
    const own = lines.slice(start, begins[i + 1] ?? lines.length)
    const titled = headingOf(own[0]?.text.trim() ?? '')
    const text = joined(own)
    if (titled && titled.rest !== '') return { text: [titled.rest, joined(own.slice(1))].join('\n'), heading: titled.heading }
    return { text, heading: headingBefore(lines, start)?.heading ?? null }
  })
  const menu = joined(lines.slice(0, begins[0] ?? lines.length))
  const [first, ...others] = recipes
  // One line is no menu: a name over what is said about it.
  if (first && first.heading === null && menu !== '' && !menu.includes('\n') && headingOf(menu) === null && !isOfEvening(menu))
    return { menu: '', recipes: [{ ...first, text: `${menu}\n${first.text}` }, ...others] }
  return { menu, recipes }
}

const together = (parts: readonly PieceOfPaste[]): PieceOfPaste => ({
  menu: parts
    .map((part) => part.menu)
    .filter(Boolean)
    .join('\n\n'),
  recipes: parts.flatMap((part) => part.recipes),
})

const splitWords = (text: string, mark: DecimalMark): PieceOfPaste => {
  const pieces: Line[][] = [[]]
  let numbers = 0
  for (const line of text.split(/\r\n|[\n\r\f]/u)) {
    if (RULE.test(line)) {
      pieces.push([])
      continue
    }
    const is = plainLine(line.trim(), mark, false, numbers + 1)
    if (is.kind === 'numbered') numbers += 1
    else if (is.kind === 'words' && is.amount) numbers = 0
    pieces.at(-1)?.push({ text: line, is })
  }
  return together(pieces.map(splitLines))
}

/**
 * Cuts a paste into a menu and recipes. A recipe begins at the title above a list of what it needs, after the method of the one before;
 * a line of dashes always cuts. What stands before the first recipe is the menu. A page or schema.org data is one recipe, whole, also among words.
 */
export const splitPaste = (text: string, mark: DecimalMark): PieceOfPaste => {
  const parts = dataInText(text)
  if (parts.length === 1 && (parts[0]?.isData || /^\s*[[{]/u.test(text))) return { menu: '', recipes: [{ text, heading: null }] }
  return together(
    parts.map((part) =>
      part.isData ? { menu: '', recipes: [{ text: part.text, heading: null }] } : splitWords(part.text, mark),
    ),
  )
}
