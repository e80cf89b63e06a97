import { z } from 'zod'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { PrismaClient } from '#prisma/client/client.ts'
import type { Rooms } from '#server/live.ts'

/** What the list of evenings shows of one: a copy of the plan's own words, kept beside it. */
export const Summary = z.object({
  name: z.string(),
  date: z.string(),
  zone: z.string(),
  /** HH:MM */
  sitDown: z.string(),
  covers: z.number(),
  courseNames: z.array(z.string()),
  cookNames: z.array(z.string()),
  dishes: z.number(),
})
export type Summary = z.infer<typeof Summary>

export const summaryOf = (evening: Evening): Summary => ({
  name: evening.name,
  date: evening.date,
  zone: evening.zone,
  sitDown: evening.sitDown.time,
  covers: evening.covers,
  courseNames: [...evening.courses].sort(bySiblingOrder).map((course) => course.name),
  cookNames: evening.cooks.map((cook) => cook.name),
  dishes: evening.dishes.filter((dish) => dish.state === 'on').length,
})

export const printSummary = (evening: Evening): string => JSON.stringify(summaryOf(evening))

/** Keeps the summaries up with the plans: writes only what is new, the newest last. */
export const followPlans = (db: PrismaClient, rooms: Rooms, log: (why: unknown) => void): void => {
  const wanted = new Map<string, string>()
  const written = new Map<string, string>()
  const writing = new Set<string>()

  const write = async (eveningId: string): Promise<void> => {
    if (writing.has(eveningId)) return
    writing.add(eveningId)
    try {
      for (
        let next = wanted.get(eveningId);
        next !== undefined && next !== written.get(eveningId);
        next = wanted.get(eveningId)
      ) {
        await db.evening.update({ where: { id: eveningId }, data: { summary: next } })
        written.set(eveningId, next)
      }
    } catch (why) {
      // The plan itself is safe in the room's log; the next edit brings the summary up again.
      log(why)
    } finally {
      writing.delete(eveningId)
    }
  }

  rooms.onPlan((eveningId, evening) => {
    wanted.set(eveningId, printSummary(evening))
    void write(eveningId)
  })
  rooms.onEmpty((eveningId) => {
    if (writing.has(eveningId)) return
    wanted.delete(eveningId)
    written.delete(eveningId)
  })
}
