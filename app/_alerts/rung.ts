import * as z from 'zod/mini'
import type { Shelf } from '#app/_sync/shelf.ts'
import type { Known } from './ringing.ts'

const Kept = z.object({ since: z.number(), told: z.record(z.string(), z.number()) })
type Kept = z.infer<typeof Kept>

/** What this device has told of an evening's calls; shared by its tabs, and kept across a reload. */
export interface Rung {
  readonly known: (nowMs: number) => Known
  readonly add: (ids: readonly string[], nowMs: number) => void
}

/** Nothing of a night is told again after so long. */
const FORGOTTEN_MS = 36 * 60 * 60_000

export const openRung = (shelf: Shelf, eveningId: string): Rung => {
  const key = `tableward/rung/${eveningId}`
  const read = (): Kept | null => {
    try {
      return Kept.parse(JSON.parse(shelf.get(key) ?? 'null'))
    } catch {
      return null
    }
  }
  const write = (kept: Kept): Kept => {
    shelf.set(key, JSON.stringify(kept))
    return kept
  }
  const now = (nowMs: number): Kept => read() ?? write({ since: nowMs, told: {} })
  return {
    known(nowMs) {
      const { since, told } = now(nowMs)
      return { since, told: new Set(Object.keys(told)) }
    },
    add(ids, nowMs) {
      if (ids.length === 0) return
      const { since, told } = now(nowMs)
      const recent = Object.entries(told).filter(([, at]) => nowMs - at < FORGOTTEN_MS)
      write({ since, told: Object.fromEntries([...recent, ...ids.map((id) => [id, nowMs] as const)]) })
    },
  }
}
