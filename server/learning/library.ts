import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { Id, line } from '#lib/domain/atoms.ts'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import { coversOf, portionsOf } from '#lib/domain/portions.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { dateAt } from '#lib/domain/time.ts'
import { Left } from '#lib/learning/eaten.ts'
import { keyOf } from '#lib/learning/observation.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { type Cut, settledDish } from '#lib/plan/settle-dish.ts'
import { seatOf } from '#server/auth/seat.ts'
import { readDish } from '#server/evenings/copy.ts'
import { listEvenings } from '#server/evenings/list.ts'
import { canReadEvening } from '#server/evenings/may.ts'
import type { EveningRefusal } from '#server/evenings/refusal.ts'
import { live } from '#server/live.ts'

export const Verdict = z.enum(['again', 'changes', 'never'])
export type Verdict = z.infer<typeof Verdict>

/** One evening on which a dish was served. */
export interface Time {
  readonly eveningId: string
  readonly dish: string
  readonly evening: string
  readonly date: string
  readonly course: string
  readonly covers: number
  /** How many it was made for. */
  readonly made: number
  /** Of the steps that one may know of: how many were told, what they were to take together and what they took; minutes. */
  readonly told: { readonly steps: number; readonly written: number; readonly took: number } | null
  readonly verdict: Verdict | null
  readonly left: Left | null
  readonly note: string
}

/** A dish by its name, on all the evenings that one was at; the latest first. */
export interface OwnDish {
  readonly name: string
  readonly times: readonly Time[]
}

/** An evening to come, into which a dish may be put. */
export interface Target {
  readonly id: string
  readonly name: string
  readonly date: string
  readonly courses: readonly { readonly id: string; readonly name: string }[]
}

export interface Library {
  readonly dishes: readonly OwnDish[]
  readonly targets: readonly Target[]
}

/** Plans are opened one by one: the latest evenings of each kind. */
const MOST_EVENINGS = 40
const MOST_TARGETS = 8

const isClosed = ({ night }: Evening): boolean => night.some((fact) => 'night' in fact && fact.closed !== undefined)

/** The dishes of one's past evenings, with how they went, and the evenings to come. What one said of a dish only oneself sees. */
export const readLibrary = async (userId: string, nowMs: number): Promise<Library> => {
  const { db, rooms } = live()
  const lines = (await listEvenings(userId)).toSorted((a, b) => (a.date < b.date ? 1 : -1))
  const isBefore = ({ date, zone }: { date: string; zone: string }) => date < dateAt(zone, nowMs)
  const coming = lines.filter((each) => !isBefore(each)).slice(-MOST_TARGETS)
  const past = lines.filter((each) => isBefore(each) || each.date === dateAt(each.zone, nowMs)).slice(0, MOST_EVENINGS)
  const ids = past.map(({ id }) => id)
  const [said, took] = await Promise.all([
    db.dishMemory.findMany({ where: { userId, eveningId: { in: ids } } }),
    db.stepMemory.findMany({ where: { eveningId: { in: ids } } }),
  ])
  const found = new Map<string, { name: string; times: Time[] }>()
  for (const { id: eveningId, role } of past) {
    const evening = await rooms.read(eveningId)
    if (!isBefore(evening) && !isClosed(evening)) continue
    for (const dish of evening.dishes.filter(({ state }) => state === 'on')) {
      const key = keyOf(dish.name)
      if (key === '') continue
      const own = took.filter(
        (row) => row.eveningId === eveningId && row.dish === key && (role === 'host' || row.userId === userId),
      )
      const words = said.find((row) => row.eveningId === eveningId && row.dish === dish.id)
      const entry = found.get(key) ?? { name: dish.name, times: [] }
      found.set(key, entry)
      entry.times.push({
        eveningId,
        dish: dish.id,
        evening: evening.name,
        date: evening.date,
        course: evening.courses.find(({ id }) => id === dish.course)?.name ?? '',
        covers: coversOf(evening, dish.course),
        made: portionsOf(evening, dish),
        told:
          own.length === 0
            ? null
            : {
                steps: own.length,
                written: own.reduce((sum, row) => sum + row.written, 0),
                took: own.reduce((sum, row) => sum + row.took, 0),
              },
        verdict: Verdict.nullable()
          .catch(null)
          .parse(words?.verdict ?? null),
        left: z
          .nullable(Left)
          .catch(null)
          .parse(words?.left ?? null),
        note: words?.note ?? '',
      })
    }
  }
  const targets: Target[] = []
  for (const { id, name, date } of coming.toReversed()) {
    const evening = await rooms.read(id)
    if (isClosed(evening)) continue
    targets.push({
      id,
      name,
      date,
      courses: evening.courses.toSorted(bySiblingOrder).map((each) => ({ id: each.id, name: each.name })),
    })
  }
  return { dishes: [...found.values()], targets }
}

export const Word = z.strictObject({
  eveningId: Id,
  dish: Id,
  verdict: Verdict.nullable().optional(),
  left: z.nullable(Left).optional(),
  note: z.optional(line(400)),
})
export type Word = z.infer<typeof Word>

/** Writes down how one found a dish: what is not named stays as it was. */
export const sayOfDish = async (userId: string, word: Word): Promise<Result<null, EveningRefusal>> => {
  const { eveningId, dish, ...said } = word
  if (!canReadEvening(await seatOf(userId, eveningId))) return fail({ kind: 'not-found' })
  const { db, rooms } = live()
  if (!(await rooms.read(eveningId)).dishes.some(({ id }) => id === dish)) return fail({ kind: 'not-found' })
  const key = { userId, eveningId, dish }
  const fields = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined))
  await db.dishMemory.upsert({ where: { userId_eveningId_dish: key }, create: { ...key, ...fields }, update: fields })
  return ok(null)
}

/** Puts a dish of one evening with its method into a course of another; one has a seat at both. */
export const putDish = async (
  userId: string,
  from: { readonly eveningId: string; readonly dish: string },
  into: { readonly eveningId: string; readonly course: string },
): Promise<Result<{ readonly dish: string; readonly name: string; readonly cuts: readonly Cut[] }, EveningRefusal>> => {
  if (!canReadEvening(await seatOf(userId, into.eveningId))) return fail({ kind: 'not-found' })
  const read = await readDish(userId, from.eveningId, from.dish)
  if (!read.ok) return read
  const { rooms } = live()
  const { host } = await rooms.read(into.eveningId)
  const settled = settledDish(read.value, { course: into.course, host }, randomUUID)
  if (!settled) return fail({ kind: 'not-found' })
  let made = false
  await rooms.edit(into.eveningId, (doc) => {
    made = bringDish(doc, settled.brought).ok
  })
  // A course that is gone meanwhile, or more than an evening holds.
  if (!made) return fail({ kind: 'too-many' })
  return ok({ dish: settled.brought.dish.id, name: settled.brought.dish.name, cuts: settled.cuts })
}
