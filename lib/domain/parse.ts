import * as z from 'zod/mini'
import { en } from 'zod/v4/locales'
import { checkEvening } from './check.ts'
import { Evening } from './evening.ts'
import { fail, ok, type Refusal, type Result } from './result.ts'

// Without it every complaint of a schema would be that the input is invalid.
z.config(en())

/** "dishes[2].course"; the empty path is the document itself. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text ? `${text}.${String(part)}` : String(part)),
    '',
  )

const refusalsOf = (issue: z.core.$ZodIssue): Refusal[] => {
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({ path: pathText([...issue.path, key]), kind: 'shape' as const, why: 'unknown field' }))
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const nearest = issue.errors.reduce((best, errors) => (depth(errors) > depth(best) ? errors : best))
    if (depth(nearest) > 0) return nearest.flatMap((inner) => refusalsOf({ ...inner, path: [...issue.path, ...inner.path] }))
  }
  return [{ path: pathText(issue.path), kind: 'shape', why: issue.message }]
}

/** How far into the value an alternative of a union got: its deepest complaint. */
const depth = (issues: readonly z.core.$ZodIssue[]): number => Math.max(0, ...issues.map((issue) => issue.path.length))

/** Refusals of a zod error, one for each field, with its path. */
export const refusals = (error: z.core.$ZodError): Refusal[] => error.issues.flatMap(refusalsOf)

/** Reads an evening from untrusted data. Refuses it whole, naming every field that is wrong. */
export const parseEvening = (data: unknown): Result<Evening, Refusal[]> => {
  const parsed = Evening.safeParse(data)
  if (!parsed.success) return fail(refusals(parsed.error))
  const broken = checkEvening(parsed.data)
  return broken.length > 0 ? fail(broken) : ok(parsed.data)
}

/** The evening as its file: fields in the schema's order, one space of indent, a final newline. */
export const printEvening = (evening: Evening): string => `${JSON.stringify(Evening.parse(evening), null, 1)}\n`
