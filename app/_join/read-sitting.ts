/** What the page of a seat's link has written on it: text alone, so that whatever was written comes back as it was. */
export interface SittingFields {
  readonly as: string
  readonly name: string
  /** Empty: somebody who is not in the plan yet. */
  readonly cook: string
  /** "here" or "home". */
  readonly works: string
  readonly minutes: string
}

const MOST_MINUTES = 240

/** Reads a posted form. Whatever is missing is empty. */
export const readFields = (form: URLSearchParams): SittingFields => {
  const text = (name: string) => (form.get(name) ?? '').trim()
  return { as: text('as'), name: text('name'), cook: text('cook'), works: text('works'), minutes: text('minutes') }
}

/** What a seat's command is made of; what is wrong in it is for the server's schema to say. */
export const sittingOf = ({ as, name, cook, works, minutes }: SittingFields): unknown => {
  if (as === 'again') return { as }
  const who = {
    cook: cook === '' ? null : cook,
    works: works === 'home' ? { kind: 'home', minutes: /^\d{1,3}$/.test(minutes) ? Number(minutes) : minutes } : { kind: 'here' },
  }
  return as === 'account' ? { as, ...who } : { as: 'name', name, ...who }
}

export type SittingProblem = { readonly field: 'name' | 'minutes' | 'cook'; readonly text: string }

/** What is wrong with the fields, in words; nothing when all can be read. */
export const problemsOf = ({ as, name, cook, works, minutes }: SittingFields): readonly SittingProblem[] => {
  if (as === 'again') return []
  const far = Number(minutes)
  const isFar = /^\d{1,3}$/.test(minutes) && far >= 1 && far <= MOST_MINUTES
  return [
    ...(as !== 'account' && name === '' ? [{ field: 'name' as const, text: 'Write your name, as the others know you.' }] : []),
    ...(name.length > 80 ? [{ field: 'name' as const, text: 'Write a shorter name, of 80 letters at the most.' }] : []),
    ...(cook === '' && works === 'home' && !isFar
      ? [{ field: 'minutes' as const, text: `Write the minutes as a number from 1 to ${MOST_MINUTES}.` }]
      : []),
  ]
}
