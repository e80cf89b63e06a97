import type { RecipePreview } from './preview.ts'

/** Read with a guess, never certain: a suggestion for a person to accept or write over. */
export interface Suggested<T> {
  readonly value: T
  readonly certain: false
}

/** What a paste says of the evening itself; null: nothing, or two things. */
export interface EveningFacts {
  readonly covers: Suggested<number> | null
  /** HH:MM. */
  readonly sitDown: Suggested<string> | null
  /** 0 is Sunday. */
  readonly weekday: Suggested<number> | null
}

const MOST_COVERS = 60
const LONGEST_LINE = 200

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']
const NUMBER = `(\\d{1,2}|${NUMBERS.join('|')})`
// "6 to 8 people" is not one number, and "for 8 pm", "for 2 hours", "for 1.5" are no people.
const NO_RANGE = '(?<!\\d\\s{0,2}(?:[-–]|to|or)\\s{0,2})(?<![\\d.,:])'
const PEOPLE = new RegExp(`${NO_RANGE}\\b${NUMBER}\\s+(?:people|persons|guests|covers|of us)\\b`, 'giu')
// "7.30 for 8" is a time.
const FOR = new RegExp(
  `(?<!\\d\\s{0,2}|[ap]m\\s{0,2})\\b(?:for|serves)\\s+${NUMBER}\\b(?=\\s*(?:[,;.:)!]?\\s*$|[,;)–-]\\s|\\.\\s|\\s(?:people|persons|guests|covers|of us|at|on|this|next)\\b))`,
  'giu',
)

const CUE =
  '\\b(?:sit(?:ting)?(?:\\s|-)down|seated|at table|dinner|supper|lunch|we eat)(?:\\s+is)?(?:\\s+(?:at|by)|\\s*[:@,–-])?\\s*'
const CLOCK = '(?<![\\d.,:/€$£])(\\d{1,2})(?:[:.h](\\d\\d)(?!\\d|[.,/]\\d)\\s*(am|pm)?|\\s*(am|pm))\\b(?!\\s*[€$£%])'
const CUED = new RegExp(`${CUE}${CLOCK}`, 'giu')
const CUED_HOUR =
  /\bsit(?:ting)?(?:\s|-)down(?:\s+at)?\s+(\d{1,2})()()()\b(?!\s*[.:h]\d|\s*(?:[ap]m|people|guests|persons|of us|covers))/giu
const OTHER_TIME = /\b(?:guests?|from|arriv\w*|drinks|doors|until|till|by|for|come)(?:\s+(?:at|from|by))?\s*$/iu

const DAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday']
const DAY = new RegExp(`\\b(?:${DAYS.join('|')})\\b(?!\\s+(?:roast|joint))`, 'giu')
/** Words of a date: which Saturday it is is said then, and the next is a wrong guess. */
const DATE =
  /\b(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)(?:uary|ruary|ch|il|ust|ember|ober|tember)?\b|\d(?:st|nd|rd|th)\b|\d\/\d|day,?\s+(?:the\s+)?\d{1,2}\b(?!\s*(?:[:.h]\d\d|[ap]m|people|guests|persons|of us|covers))/iu

/** The one value that all of them are. */
const onlyOne = <T>(values: readonly T[]): Suggested<T> | null => {
  const [value, other] = [...new Set(values)]
  return value === undefined || other !== undefined ? null : { value, certain: false }
}

const peopleOf = (written: string): number => {
  const word = NUMBERS.indexOf(written.toLowerCase())
  return word < 0 ? Number(written) : word + 1
}

const coversIn = (line: string): readonly number[] =>
  [PEOPLE, FOR]
    .flatMap((words) => [...line.matchAll(words)].map((found) => peopleOf(found[1] ?? '')))
    .filter((count) => count >= 1 && count <= MOST_COVERS)

/** "7.30" of a dinner is in the evening, "07.30" is not. */
const clockOf = ([, hours = '', dotted, half, other]: RegExpExecArray): string | null => {
  const said = (half ?? other ?? '').toLowerCase()
  const [hour, minutes] = [Number(hours), dotted || '00']
  if (hour > 23 || Number(minutes) > 59 || (said !== '' && (hour < 1 || hour > 12))) return null
  const isLate = said === 'pm' || (said === '' && hour >= 1 && hour <= 9 && hours.length === 1)
  const full = isLate ? (hour % 12) + 12 : said === 'am' ? hour % 12 : hour
  return `${String(full).padStart(2, '0')}:${minutes}`
}

const isClock = (clock: string | null): clock is string => clock !== null

const cuedIn = (line: string): readonly string[] =>
  [CUED, CUED_HOUR].flatMap((words) => [...line.matchAll(words)].map(clockOf)).filter(isClock)

/** A time without a word of what it is: to the quarter, so that no date and no price is one. */
const bareIn = (line: string): readonly string[] =>
  [...line.matchAll(new RegExp(CLOCK, 'giu'))]
    .filter((found) => !OTHER_TIME.test(line.slice(0, found.index)) && /^(?:00|15|30|45)?$/u.test(found[2] ?? ''))
    .map(clockOf)
    .filter(isClock)

const daysIn = (line: string): readonly number[] =>
  DATE.test(line) ? [] : [...line.matchAll(DAY)].map(([day]) => DAYS.indexOf(day.toLowerCase()))

/** What the lines about an evening say of it: "for 8", "sit down 19.30", "Saturday". */
export const readFacts = (lines: readonly string[]): EveningFacts => {
  const said = lines.map((line) => line.slice(0, LONGEST_LINE))
  const cued = said.flatMap(cuedIn)
  return {
    covers: onlyOne(said.flatMap(coversIn)),
    sitDown: onlyOne(cued.length > 0 ? cued : said.flatMap(bareIn)),
    weekday: onlyOne(said.flatMap(daysIn)),
  }
}

const ABOUT =
  /\b(?:the|an?|our|menu|dinner|supper|lunch|party|evening|night|meal|for|serves|on|at|by|is|are|we|this|next|sit(?:ting)?|down|people|guests|persons|covers|of us)\b|[\s,.;:!()@*#_–—-]+/giu

/** Whether a line says when and for how many, and nothing that is eaten. */
export const isOfEvening = (line: string): boolean => {
  if (line.length > LONGEST_LINE || coversIn(line).length + cuedIn(line).length + bareIn(line).length + daysIn(line).length === 0)
    return false
  const rest = [PEOPLE, FOR, CUED, CUED_HOUR, new RegExp(CLOCK, 'giu'), DAY].reduce(
    (left, words) => left.replace(words, ' '),
    line,
  )
  return rest.replace(ABOUT, '') === ''
}

const PORTIONS = /^(?:|people|servings?|portions?|persons?|guests?)$/u

/** For how many the recipes are, where each says it and all say the same. */
export const commonYield = (recipes: readonly RecipePreview[]): Suggested<number> | null => {
  const counts = recipes.map(({ yields }) =>
    yields && yields.least === yields.most && PORTIONS.test(yields.of) ? yields.least : Number.NaN,
  )
  const found = onlyOne(counts)
  return found && Number.isInteger(found.value) && found.value >= 1 && found.value <= MOST_COVERS ? found : null
}
