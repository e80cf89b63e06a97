import { inTurn } from '#server/guests/in-turn.ts'
import { live } from '#server/live.ts'

/** An entry as it is to be given out: what it is called for ever, a mark of what it says, and when it begins. */
export interface Said {
  readonly uid: string
  readonly digest: string
  readonly startsAt: number
}

export interface Numbered {
  readonly uid: string
  /** Rises when what the entry says changes (RFC 5545, 3.8.7.4). */
  readonly sequence: number
  readonly changedAt: number
}

export interface Numbers {
  readonly entries: ReadonlyMap<string, Numbered>
  /** What was given out once and is no longer said: calendars that keep files are told that it is off. */
  readonly gone: readonly (Numbered & { readonly startsAt: number })[]
}

/** Gives each entry of a seat its number, and remembers what it said. */
export const numberEntries = (memberId: string, said: readonly Said[]): Promise<Numbers> =>
  inTurn(`calendar ${memberId}`, async () => {
    const { db } = live()
    const at = new Date()
    const rows = await db.calendarEntry.findMany({ where: { memberId } })
    const before = new Map(rows.map((row) => [row.uid, row]))
    const now = new Set(said.map(({ uid }) => uid))
    const fresh = said
      .filter(({ uid }) => !before.has(uid))
      .map(({ uid, digest, startsAt }) => ({ memberId, uid, digest, startsAt: new Date(startsAt), sequence: 0, changedAt: at }))
    const changed = said.flatMap(({ uid, digest, startsAt }) => {
      const row = before.get(uid)
      if (!row || (row.digest === digest && row.goneAt === null)) return []
      return [{ ...row, digest, startsAt: new Date(startsAt), sequence: row.sequence + 1, changedAt: at, goneAt: null }]
    })
    const left = rows
      .filter(({ uid, goneAt }) => goneAt === null && !now.has(uid))
      .map((row) => ({ ...row, sequence: row.sequence + 1, changedAt: at, goneAt: at }))
    const writes = [...changed, ...left].map(({ memberId: _, uid, ...data }) =>
      db.calendarEntry.update({ where: { memberId_uid: { memberId, uid } }, data }),
    )
    if (fresh.length > 0 || writes.length > 0)
      await db.$transaction([...(fresh.length > 0 ? [db.calendarEntry.createMany({ data: fresh })] : []), ...writes])
    const after = new Map([...rows, ...fresh, ...changed, ...left].map((row) => [row.uid, row]))
    const all = [...after.values()].map(({ uid, sequence, changedAt, startsAt }) => ({
      uid,
      sequence,
      changedAt: changedAt.getTime(),
      startsAt: startsAt.getTime(),
    }))
    return {
      entries: new Map(all.filter(({ uid }) => now.has(uid)).map((each) => [each.uid, each])),
      gone: all.filter(({ uid }) => !now.has(uid)),
    }
  })
