import { NEED_CHOICES } from '#app/_words/need-choices.ts'
import type { Guest } from '#lib/domain/people.ts'
import { MOST_PLACES } from '#server/guests/most.ts'
import type { Reply } from '#server/guests/reply.ts'

// The answer as the form has it: text alone, so that whatever was written comes back as it was.

export interface NeedFields {
  /** One of the list, OWN, or empty. */
  readonly need: string
  readonly own: string
  readonly grade: string
}

export interface PersonFields {
  /** Empty for somebody whom the household adds. */
  readonly id: string
  readonly name: string
  readonly reply: string
  readonly plate: string
  /** "all", "but" or empty: not said. */
  readonly eats: string
  readonly needs: readonly NeedFields[]
  readonly drinks: string
  readonly drives: string
  readonly words: string
}

export interface ReplyFields {
  readonly revision: string
  readonly arrives: string
  /** The time that stood there when the page was opened. */
  readonly arrivedBefore: string
  readonly consent: boolean
  readonly people: readonly PersonFields[]
}

/** A need that is not in the list and is written. */
export const OWN = 'own'

const LISTED = new Set(NEED_CHOICES.map(([need]) => need))
const ROWS = 6
const MOST_ROWS = 40

const NOBODY: PersonFields = {
  id: '',
  name: '',
  reply: '',
  plate: 'adult',
  eats: '',
  needs: [],
  drinks: 'unknown',
  drives: 'no',
  words: '',
}

/** What the form shows at first: what is stored, and room for those who may still be added. */
export const fieldsOf = (reply: Reply): ReplyFields => {
  const known = reply.people.map(personOf)
  const room = Array.from({ length: Math.max(0, reply.places - known.length) }, (_, at) =>
    known.length + at === 0 ? NOBODY : { ...NOBODY, reply: 'yes' },
  )
  const alone = known.length === 0 && reply.places === 1
  const arrives = timeOf(reply)
  return {
    revision: String(reply.revision),
    arrives,
    arrivedBefore: arrives,
    consent: reply.consent,
    people: [...known, ...room].map((person, at) => withRows(alone && at === 0 ? { ...person, name: reply.label } : person)),
  }
}

/** Empty rows behind those that are filled in. */
export const withRows = (person: PersonFields): PersonFields => {
  const filled = person.needs.findLastIndex(({ need, own }) => need !== '' || own !== '') + 1
  const rows = Math.min(MOST_ROWS, Math.max(ROWS, filled + 2))
  const empty = { need: '', own: '', grade: '' }
  return { ...person, needs: Array.from({ length: rows }, (_, at) => person.needs[at] ?? empty) }
}

const timeOf = ({ people, evening }: Reply): string =>
  people.find(({ arrives }) => arrives)?.arrives?.time ?? evening.guestsFrom.time

const personOf = (guest: Guest): PersonFields => ({
  id: guest.id,
  name: guest.name,
  reply: guest.reply === 'waiting' ? '' : guest.reply,
  plate: plateOf(guest),
  eats: guest.needs === null ? '' : guest.needs.length === 0 ? 'all' : 'but',
  needs: (guest.needs ?? []).map(({ need, grade }) =>
    LISTED.has(need) ? { need, own: '', grade } : { need: OWN, own: need.replaceAll('-', ' '), grade },
  ),
  drinks: guest.drinks,
  drives: guest.drives ? 'yes' : 'no',
  words: guest.words,
})

/** How much somebody eats. The portions are common practice, without a source. */
export const PLATES: Readonly<Record<string, { readonly child: boolean; readonly portion: number }>> = {
  adult: { child: false, portion: 1 },
  small: { child: false, portion: 0.75 },
  large: { child: false, portion: 1.5 },
  child: { child: true, portion: 0.5 },
  'child-full': { child: true, portion: 1 },
}

/** A plate that a host has set otherwise stays as it is unless another one is chosen. */
export const KEPT = 'kept'

const plateOf = ({ child, portion }: Guest): string =>
  Object.entries(PLATES).find(([, plate]) => plate.child === child && plate.portion === portion)?.[0] ?? KEPT

/** Reads a posted form. Whatever is missing is empty. */
export const readFields = (form: URLSearchParams): ReplyFields => {
  const text = (name: string) => form.get(name) ?? ''
  const people: PersonFields[] = []
  for (let at = 0; at < MOST_PLACES && form.has(`name-${at}`); at += 1) {
    const needs: NeedFields[] = []
    for (let row = 0; row < MOST_ROWS && form.has(`need-${at}-${row}`); row += 1)
      needs.push({
        need: text(`need-${at}-${row}`),
        own: text(`own-${at}-${row}`),
        grade: text(`grade-${at}-${row}`),
      })
    people.push(
      withRows({
        id: text(`id-${at}`),
        name: text(`name-${at}`).trim(),
        reply: text(`reply-${at}`),
        plate: text(`plate-${at}`),
        eats: text(`eats-${at}`),
        needs,
        drinks: text(`drinks-${at}`) || 'unknown',
        drives: text(`drives-${at}`) || 'no',
        words: text(`words-${at}`).replaceAll('\r\n', '\n').trim(),
      }),
    )
  }
  return {
    revision: text('revision'),
    arrives: text('arrives'),
    arrivedBefore: text('arrived-before'),
    consent: text('consent') === 'yes',
    people,
  }
}
