import { live } from '#server/live.ts'

/** Runs what changes one evening's guests one after the other: what was looked at still holds when it is written. */
export const inTurn = <T>(eveningId: string, work: () => Promise<T>): Promise<T> => {
  const last = live().turns
  const before = last.get(eveningId) ?? Promise.resolve()
  const mine = before.then(work, work)
  const done = mine.catch(() => undefined)
  last.set(eveningId, done)
  void done.then(() => {
    if (last.get(eveningId) === done) last.delete(eveningId)
  })
  return mine
}
