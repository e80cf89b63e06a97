import { isOfEvening } from './evening-facts.ts'
import type { Found, Stretch } from './preview.ts'

/** A dish named in a menu. Not certain: cut out of a longer phrase ("lamb with beans and potatoes"). */
export type MenuDish = Found<string>

export interface MenuCourse {
  readonly name: string
  /** Before sit-down: canapés, nibbles, a glass. */
  readonly welcome: boolean
  readonly dishes: readonly MenuDish[]
}

export interface MenuPreview {
  readonly courses: readonly MenuCourse[]
  /** What stands in no course. */
  readonly leftOver: readonly (Stretch & { readonly text: string })[]
}

export const LONGEST_MENU = 20_000
const MOST_COURSES = 24
const MOST_DISHES = 12

const COURSES: readonly (readonly [RegExp, string, boolean])[] = [
  [/^(?:welcome|canap[eé]s?|nibbles|aperitifs?|aperitivo|to begin with|with drinks|before dinner|snacks)$/iu, 'Welcome', true],
  [/^(?:starters?|first(?: course)?|to start|hors d'oeuvres?|appetizers?|appetisers?)$/iu, 'Starter', false],
  [/^(?:soups?)$/iu, 'Soup', false],
  [/^(?:fish(?: course)?)$/iu, 'Fish', false],
  [/^(?:mid(?:dle)? course|second(?: course)?|in between)$/iu, 'Second', false],
  [/^(?:mains?(?: course)?|main dish|third(?: course)?)$/iu, 'Main', false],
  [/^(?:cheese(?: course)?|cheeses)$/iu, 'Cheese', false],
  [/^(?:puddings?|desserts?|sweets?|afters|to finish|fourth(?: course)?|fifth(?: course)?)$/iu, 'Dessert', false],
  [/^(?:coffee|with coffee|petits? fours?)$/iu, 'Coffee', false],
  [/^(?:sides?|side dishes|alongside)$/iu, 'Sides', false],
]

// Alone on a line these are as likely to be what there is to eat.
const FOOD_ALONE = /^(?:soups?|fish|cheeses?|coffee|snacks|sweets?)$/iu

const courseOf = (text: string): { name: string; welcome: boolean; said: string } | null => {
  const said = text.trim().replace(/[’]/gu, "'")
  const found = said.length <= 30 ? COURSES.find(([words]) => words.test(said)) : undefined
  return found ? { name: found[1], welcome: found[2], said: text.trim() } : null
}

interface Piece extends Stretch {
  readonly text: string
}

/** A piece of text without its outer white space, bullets and full stop, with its place. */
const trimmed = (whole: string, from: number, to: number): Piece | null => {
  let [start, end] = [from, to]
  while (start < end && /[\s•*·–—\-,;]/u.test(whole.charAt(start))) start += 1
  while (end > start && /[\s.,;–—-]/u.test(whole.charAt(end - 1))) end -= 1
  return end > start ? { text: whole.slice(start, end), from: start, to: end } : null
}

/** The text cut at each place where a sign of `cut` stands. */
const cutAt = (whole: string, piece: Stretch, cut: RegExp): readonly Piece[] => {
  const pieces: Piece[] = []
  let from = piece.from
  for (const found of whole.slice(piece.from, piece.to).matchAll(cut)) {
    const one = trimmed(whole, from, piece.from + found.index)
    if (one) pieces.push(one)
    from = piece.from + found.index + found[0].length
  }
  const last = trimmed(whole, from, piece.to)
  return last ? [...pieces, last] : pieces
}

/**
 * The dishes of a phrase: "Lamb shoulder with roast potatoes, red cabbage and beans" is four, of which those after "with" are a guess.
 * "Fish and chips" and "salt, pepper" stay whole: only what follows "with" is cut at commas and "and".
 */
const dishesOf = (whole: string, piece: Piece): readonly MenuDish[] => {
  const [head, ...rest] = cutAt(whole, piece, /\s(?:with|served with|and on the side)\s/giu)
  if (!head) return []
  const certain = rest.length === 0
  const sides = rest.flatMap((side) => cutAt(whole, side, /,\s*(?:and\s)?|\s(?:and|&)\s/giu))
  return [head, ...sides].slice(0, MOST_DISHES).map(({ text, from, to }) => ({ value: text.slice(0, 120), from, to, certain }))
}

/** The course that a line names, alone or before what there is to eat; `length`: where that begins, 0 when nothing follows. */
const headingOf = (text: string): { readonly heading: ReturnType<typeof courseOf>; readonly length: number } => {
  const colon = /^([^:–—]{1,30}?)\s*(?::|\s[–—-]\s)\s*/u.exec(text)
  const before = colon?.[1] ? courseOf(colon[1]) : null
  const alone = FOOD_ALONE.test(text) ? null : courseOf(text.replace(/:$/u, ''))
  return { heading: alone ?? before, length: before && colon ? colon[0].length : 0 }
}

/**
 * A pasted menu ("Starter: … / Main: … with …", or headings with lines below) as courses and dishes. A blank line or a heading begins
 * a course; lines without any heading are a course each; what stands before two or more headings is left over. Sides join the main course before them.
 */
export const readMenu = (menu: string): MenuPreview => {
  const whole = menu.slice(0, LONGEST_MENU)
  const courses: { name: string; welcome: boolean; dishes: MenuDish[] }[] = []
  const leftOver: Piece[] = []
  let open: (typeof courses)[number] | null = null
  let headed = false
  const pieces = cutAt(whole, { from: 0, to: whole.length }, /[\r\n]|\s[/|]\s/gu)
  // Where two headings say what the courses are, what stands before the first of them is talk.
  const isHeaded = pieces.filter((piece) => headingOf(piece.text).heading !== null).length >= 2
  for (const piece of pieces) {
    const { heading, length } = headingOf(piece.text)
    if (!heading && isOfEvening(piece.text)) {
      leftOver.push(piece)
      continue
    }
    const start = piece.from + length
    const rest = heading && start === piece.from ? null : trimmed(whole, start, piece.to)
    if (heading) {
      headed = true
      const main = heading.name === 'Sides' ? (courses.find((course) => course.name === 'Main') ?? courses.at(-1)) : undefined
      open = main ?? {
        name: heading.said.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase()),
        welcome: heading.welcome && courses.every((course) => !course.welcome),
        dishes: [],
      }
      if (!main && courses.length < MOST_COURSES) courses.push(open)
    } else if (!headed && !isHeaded) {
      open = { name: `Course ${courses.length + 1}`, welcome: false, dishes: [] }
      if (courses.length < MOST_COURSES) courses.push(open)
    }
    if (!rest) continue
    if (open && courses.includes(open) && open.dishes.length < MOST_DISHES)
      open.dishes.push(...dishesOf(whole, rest).slice(0, MOST_DISHES - open.dishes.length))
    else leftOver.push(rest)
  }
  if (menu.length > whole.length)
    leftOver.push({ text: menu.slice(LONGEST_MENU, LONGEST_MENU + 300), from: LONGEST_MENU, to: menu.length })
  return { courses: named(courses), leftOver }
}

/** Lines without headings: three courses are starter, main and dessert, by the order in which people eat; other numbers stay numbered. */
const named = (courses: readonly MenuCourse[]): readonly MenuCourse[] =>
  courses.length === 3 && courses.every((course, i) => course.name === `Course ${i + 1}`)
    ? courses.map((course, i) => ({ ...course, name: ['Starter', 'Main', 'Dessert'][i] ?? course.name }))
    : courses
