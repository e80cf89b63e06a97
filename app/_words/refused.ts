import type { Refusal } from '#lib/domain/result.ts'

const FIELDS: Readonly<Record<string, string>> = {
  email: 'The e-mail address',
  name: 'The name',
  password: 'The password',
  current: 'The password you have now',
  next: 'The new password',
  date: 'The date',
  zone: 'The time zone',
  sitDown: 'The time to sit down',
  covers: 'The number of people',
  guestsFrom: 'The time guests come',
  cooks: 'Who cooks',
  role: 'The role',
  cook: 'The cook',
}

const SHAPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
}

/** The schema library's own phrases, in words that say what to do. */
const plainWhy = (why: string): string => {
  const type = /^Invalid input: expected (\w+), received (\w+)/.exec(why)
  if (type) return type[2] === 'undefined' ? 'is missing' : `must be ${SHAPES[type[1] ?? ''] ?? type[1]}`
  const option = /^Invalid (?:option|input): expected (?:one of )?(.+)$/.exec(why)
  if (option) return `must be ${(option[1] ?? '').replaceAll('|', ' or ')}`
  const small = /^Too small: expected (?:\w+ )?to (?:be|have) (>=?)(-?[\d.]+)( characters)?/.exec(why)
  if (small) return small[3] ? 'must not be empty' : `must be ${small[1] === '>' ? 'more than' : 'at least'} ${small[2]}`
  const big = /^Too big: expected (?:\w+ )?to (?:be|have) <=?(-?[\d.]+)( characters)?/.exec(why)
  if (big) return `must be at most ${big[1]}${big[2] ?? ''}`
  return why
}

/** A refused field of a file, by its path in it: "dishes[2].course: no course has the id …". */
export const fileRefusalText = (refusal: Refusal): string => `${refusal.path || 'The file'}: ${plainWhy(refusal.why)}`

/** A refused field in words: what it is, and what is wrong with it. */
export const refusedText = (refusal: Refusal): string => {
  const field = FIELDS[refusal.path] ?? (refusal.path ? `“${refusal.path}”` : 'This')
  const why = plainWhy(refusal.why)
  return `${field}: ${why.replace(/^(must|is missing)/, 'it $1')}${/[.!?]$/.test(why) ? '' : '.'}`
}

/** The refusals by field, for showing each below its own line. */
export const refusedByField = (refusals: readonly Refusal[]): Readonly<Record<string, string>> =>
  Object.fromEntries(refusals.map((refusal) => [refusal.path.split(/[.[]/)[0] ?? '', refusedText(refusal)]))
