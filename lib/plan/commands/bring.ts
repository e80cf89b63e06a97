import * as Y from 'yjs'
import type * as z from 'zod/mini'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { Course, Dish, Step } from '#lib/domain/menu.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { type EntryOf, type EntryRoot, MOST, rootMap } from '#lib/plan/layout.ts'
import { keysFor, type Place, spreadKeys } from '#lib/plan/order-keys.ts'
import { entryContent } from '#lib/plan/write-evening.ts'
import { writeKeys } from './add.ts'
import { type EditFault, refusedBy, refusedFor } from './fault.ts'
import { idTaken, presentEntry, siblingsOf } from './siblings.ts'

/** A whole dish under ids that nobody has used. Steps and ingredients stand in the order of their lists. */
export interface Brought {
  readonly dish: Omit<Dish, 'order'>
  readonly steps: readonly Omit<Step, 'order'>[]
  readonly ingredients: readonly Omit<Ingredient, 'order'>[]
}

const LAST: Place = { kind: 'last' }

/** Adds a whole dish at its place in its course, in one transaction; all of it or nothing. Gives the dish's id back. */
export const bringDish = (doc: Y.Doc, brought: Brought, place: Place = LAST): Result<string, EditFault> => {
  const made = bringDishes(doc, [], [brought], place)
  return made.ok ? ok(brought.dish.id) : made
}

/** Adds courses behind those that are there, and whole dishes to these or to others, in one transaction; all of it or nothing. */
export const bringDishes = (
  doc: Y.Doc,
  courses: readonly Omit<Course, 'order'>[],
  dishes: readonly Brought[],
  place: Place = LAST,
): Result<null, EditFault> => {
  const steps = dishes.flatMap((each) => each.steps)
  const ingredients = dishes.flatMap((each) => each.ingredients)
  const fault =
    firstRefused(Course, courses) ??
    firstRefused(
      Dish,
      dishes.map((each) => each.dish),
    ) ??
    firstRefused(Step, steps) ??
    firstRefused(Ingredient, ingredients) ??
    usedId(doc, [...courses, ...dishes.map((each) => each.dish), ...steps, ...ingredients]) ??
    beyond(doc, { courses: courses.length, dishes: dishes.length, steps: steps.length, ingredients: ingredients.length }) ??
    astray(doc, new Set(courses.map((course) => course.id)), dishes)
  if (fault) return fail(fault)
  doc.transact(() => {
    for (const course of courses) writeAt(doc, 'courses', null, course, LAST)
    for (const each of dishes) {
      writeAt(doc, 'dishes', each.dish.course, each.dish, place)
      writeAll(doc, 'steps', each.steps)
      writeAll(doc, 'ingredients', each.ingredients)
    }
  })
  return ok(null)
}

const firstRefused = (schema: z.ZodMiniType, entries: readonly object[]): EditFault | null => {
  for (const entry of entries) {
    const parsed = schema.safeParse({ ...entry, order: '0' })
    if (!parsed.success) return refusedBy(parsed.error)
  }
  return null
}

export const usedId = (doc: Y.Doc, entries: readonly { readonly id: string }[]): EditFault | null => {
  const seen = new Set<string>()
  for (const { id } of entries) {
    if (seen.has(id) || idTaken(doc, id)) return { kind: 'id-taken', id }
    seen.add(id)
  }
  return null
}

/** More than an evening holds would be written and never read. */
export const beyond = (doc: Y.Doc, more: Readonly<Partial<Record<EntryRoot, number>>>): EditFault | null => {
  for (const [root, count] of Object.entries(more) as [EntryRoot, number][]) {
    const there = [...(rootMap(doc, root)?.values() ?? [])].filter(
      (map) => map instanceof Y.Map && map.size > 0 && map.get('gone') !== true,
    )
    if (count > 0 && there.length + count > MOST[root])
      return refusedFor(root, `an evening holds at most ${MOST[root]} of them, and has ${there.length}`)
  }
  return null
}

/** What the new entries name must be there or come with them. */
const astray = (doc: Y.Doc, courses: ReadonlySet<string>, dishes: readonly Brought[]): EditFault | null => {
  for (const { dish, steps, ingredients } of dishes) {
    const own = new Set(steps.map((step) => step.id))
    const isStep = (id: string) => own.has(id) || presentEntry(doc, 'steps', id) !== null
    if (!courses.has(dish.course) && !presentEntry(doc, 'courses', dish.course))
      return { kind: 'unknown-entry', root: 'courses', id: dish.course }
    if (!presentEntry(doc, 'kitchens', dish.kitchen)) return { kind: 'unknown-entry', root: 'kitchens', id: dish.kitchen }
    for (const entry of [...steps, ...ingredients])
      if (entry.dish !== dish.id) return refusedFor('dish', 'must be the dish that it comes with')
    const lost =
      steps.flatMap((step) => step.after.map((after) => after.step)).find((id) => !isStep(id)) ??
      ingredients.map((ingredient) => ingredient.step).find((id) => id !== undefined && !own.has(id))
    if (lost !== undefined) return { kind: 'unknown-entry', root: 'steps', id: lost }
  }
  return null
}

const writeAt = <R extends 'courses' | 'dishes'>(
  doc: Y.Doc,
  root: R,
  parent: string | null,
  entry: Omit<EntryOf[R], 'order'> & { readonly id: string },
  place: Place,
): void => {
  const keys = keysFor(siblingsOf(doc, root, parent, entry.id), entry.id, place)
  const ordered = { ...entry, order: keys.get(entry.id) ?? '' } as EntryOf[R] & { readonly order: string }
  doc.getMap(root).set(entry.id, entryContent(root, ordered))
  writeKeys(doc, root, keys, entry.id)
}

const writeAll = <R extends 'steps' | 'ingredients'>(
  doc: Y.Doc,
  root: R,
  entries: readonly (Omit<EntryOf[R], 'order'> & { readonly id: string })[],
): void => {
  const keys = spreadKeys(entries.length)
  for (const [at, entry] of entries.entries()) {
    const ordered = { ...entry, order: keys[at] ?? '' } as EntryOf[R] & { readonly order: string }
    doc.getMap(root).set(entry.id, entryContent(root, ordered))
  }
}
