import * as z from 'zod/mini'

type Schema = z.core.$ZodType

/** The schema behind what makes it optional, nullable or defaulted. */
const bare = (schema: Schema): Schema =>
  schema instanceof z.core.$ZodOptional || schema instanceof z.core.$ZodNullable || schema instanceof z.core.$ZodDefault
    ? bare(schema._zod.def.innerType)
    : schema

const kindOf = (schema: Schema): string | null => {
  const kind = schema instanceof z.core.$ZodObject ? schema._zod.def.shape.kind : undefined
  return kind instanceof z.core.$ZodLiteral ? String(kind._zod.def.values[0]) : null
}

/** Every field that a schema knows, down to the last: "ways[].uses[].oven.lowC". A member of a union stands under its kind. */
export const schemaLeaves = (schema: Schema, path = ''): string[] => {
  const one = bare(schema)
  if (one instanceof z.core.$ZodArray) return schemaLeaves(one._zod.def.element, `${path}[]`)
  if (one instanceof z.core.$ZodUnion)
    return [
      ...new Set(
        one._zod.def.options.flatMap((option) => {
          const kind = kindOf(option)
          return schemaLeaves(option, kind === null ? path : `${path}.${kind}`)
        }),
      ),
    ]
  if (one instanceof z.core.$ZodObject)
    return Object.entries(one._zod.def.shape).flatMap(([name, field]) =>
      name === 'kind' && bare(field) instanceof z.core.$ZodLiteral ? [] : schemaLeaves(field, path ? `${path}.${name}` : name),
    )
  return [path]
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Which of those fields two values differ in; a list that grew or shrank, or a thing that became another kind, is its own path. */
export const changedLeaves = (before: unknown, after: unknown, path = ''): string[] => {
  if (Array.isArray(before) && Array.isArray(after)) {
    if (before.length !== after.length) return [`${path}[]`]
    return before.flatMap((value, index) => changedLeaves(value, after[index], `${path}[]`))
  }
  if (isObject(before) || isObject(after)) {
    if ((before !== undefined && !isObject(before)) || (after !== undefined && !isObject(after))) return [path]
    const [from, to] = [isObject(before) ? before : {}, isObject(after) ? after : {}]
    if (isObject(before) && isObject(after) && from.kind !== to.kind)
      return path.endsWith('uses[]') ? [path] : changedFields(from, to, path)
    // What tells the members of a union apart; the kind of a wait is a field like any other.
    const under = path.endsWith('uses[]') ? `${path}.${String(from.kind ?? to.kind)}` : path
    return changedFields(from, to, under)
  }
  return before === after ? [] : [path]
}

const changedFields = (from: Record<string, unknown>, to: Record<string, unknown>, path: string): string[] =>
  [...new Set([...Object.keys(from), ...Object.keys(to)])].flatMap((name) =>
    changedLeaves(from[name], to[name], path ? `${path}.${name}` : name),
  )
