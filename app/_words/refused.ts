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
  role: 'The role',
  cook: 'The cook',
}

/** A refused field in words: what it is, and what is wrong with it. */
export const refusedText = (refusal: Refusal): string => {
  const field = FIELDS[refusal.path] ?? (refusal.path ? `“${refusal.path}”` : 'This')
  return `${field}: ${refusal.why.replace(/^must/, 'it must')}${/[.!?]$/.test(refusal.why) ? '' : '.'}`
}

/** The refusals by field, for showing each below its own line. */
export const refusedByField = (refusals: readonly Refusal[]): Readonly<Record<string, string>> =>
  Object.fromEntries(refusals.map((refusal) => [refusal.path.split(/[.[]/)[0] ?? '', refusedText(refusal)]))
