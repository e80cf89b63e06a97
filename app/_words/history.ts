import type { Evening } from '#lib/domain/evening.ts'
import type { ChangeLine } from '#server/evenings/history.ts'
import { listText } from './clock.ts'
import { namesOf } from './names.ts'
import { shorten } from './shorten.ts'

/** What fields are called; the rest of a thing's fields are "details". */
const FIELDS: Readonly<Record<string, string>> = {
  name: 'the name',
  date: 'the date',
  zone: 'the time zone',
  guestsFrom: 'when guests come',
  sitDown: 'when you sit down',
  covers: 'the number of covers',
  drinkers: 'how many drink alcohol',
  rules: 'the rules of food safety',
  host: 'whose kitchen it is',
  notes: 'the notes',
  does: 'what is done',
  ways: 'how and how long',
  course: 'the course',
  dish: 'the dish',
  order: 'the place in its list',
  presence: 'the hours',
  pace: 'the pace',
  kit: 'the kit',
  toTable: 'the way to the table',
  lead: 'who leads it',
  state: 'whether it is served',
  portions: 'the portions',
  yields: 'for how many it is written',
  kitchen: 'the kitchen',
  amount: 'the amount',
  food: 'the food',
  why: 'the reason',
}

/** A change in a sentence without who and when: "changed the name and the notes of “Lamb”". */
export const changeText = (evening: Evening, { root, entry, fields }: Pick<ChangeLine, 'root' | 'entry' | 'fields'>): string => {
  if (root === 'guests')
    return listText([...new Set(fields.map((field) => GUESTS[field] ?? 'changed something about the guests'))])
  if (root === 'members') return listText([...new Set(fields.map((field) => MEMBERS[field] ?? 'changed who has a seat'))])
  const isThere = nameOf(evening, entry) !== null
  const thing =
    root in NOUNS && !isThere && fields.includes('gone') ? (NOUNS[root] ?? 'something') : thingText(evening, root, entry)
  if (root === 'claims') return `settled who does ${thing}`
  if (root === 'night') return `told how it went with ${thing}`
  if (fields.includes('gone') && !fields.includes('')) return isThere ? `brought ${thing} back` : `took ${thing} away`
  if (fields.includes('')) return `added ${thing}`
  return `changed ${listText([...new Set(fields.map((field) => FIELDS[field] ?? 'details'))])} of ${thing}`
}

const GUESTS: Readonly<Record<string, string>> = {
  invite: 'invited a household',
  rotate: 'made a new link for a household',
  revoke: 'withdrew an invitation',
  forget: 'took an invitation out of the list',
  change: 'changed an invitation',
  remind: 'reminded a household',
  add: 'wrote down a guest',
  set: 'changed a guest',
  remove: 'took a guest out',
  replies: 'changed how answers come in',
}

const MEMBERS: Readonly<Record<string, string>> = {
  add: 'gave somebody a seat',
  remove: 'took a seat away',
  cook: 'said which cook somebody is',
  role: 'changed who is a host',
  link: 'made or closed a link for a cook',
}

const NOUNS: Readonly<Record<string, string>> = {
  kitchens: 'a kitchen',
  cooks: 'a cook',
  courses: 'a course',
  dishes: 'a dish',
  steps: 'a step',
  ingredients: 'an ingredient',
  drinks: 'a drink',
  shopping: 'a line of the shopping',
  ticks: 'a tick of the shopping',
  offers: 'an offer',
}

/** The thing by its name while it is there. */
const thingText = (evening: Evening, root: string, entry: string): string => {
  if (root === 'evening') return 'the evening'
  const id = root === 'night' ? entry.replace(/^[a-z]+:/, '') : entry
  const name = nameOf(evening, id)
  if (name !== null) return `“${name}”`
  if (root === 'night') return 'the evening'
  return NOUNS[root] === undefined ? 'something that is no longer there' : `${NOUNS[root]} that is no longer there`
}

const nameOf = (evening: Evening, id: string): string | null => {
  const names = namesOf(evening)
  if (names.step(id)) return names.stepName(id)
  const all: readonly { readonly id: string; readonly name: string }[] = [
    ...evening.dishes,
    ...evening.courses,
    ...evening.cooks,
    ...evening.kitchens,
    ...evening.drinks,
    ...(evening.offers ?? []),
    ...evening.ingredients.map((one) => ({ id: one.id, name: one.food })),
  ]
  const name = all.find((one) => one.id === id)?.name
  return name ? shorten(name, 60) : null
}
