import type { Clock } from '#server/sync/clock.ts'

/** What a server does by itself now and then. */
export interface Chore {
  readonly name: string
  readonly run: (nowMs: number) => Promise<unknown>
  /** Also at once, when the server starts. */
  readonly atStart?: true
}

interface Parts {
  readonly clock: Clock
  readonly chores: readonly Chore[]
  readonly log: (what: string, why: unknown) => void
}

export interface Upkeep {
  /** Does all of it now, after what is under way. */
  now(): Promise<void>
  /** Stops, after what is under way. */
  close(): Promise<void>
}

const EVERY = 10 * 60_000

/** Does the chores one after the other every ten minutes; one that fails is tried again the next time and hinders no other. */
export const openUpkeep = ({ clock, chores, log }: Parts): Upkeep => {
  let under: Promise<void> = Promise.resolve()
  const all = async (which: readonly Chore[]) => {
    for (const { name, run } of which) await run(clock.now()).catch((why: unknown) => log(`${name} failed`, why))
  }
  const now = (which = chores) => {
    under = under.then(() => all(which))
    return under
  }
  void now(chores.filter(({ atStart }) => atStart))
  const stop = clock.every(EVERY, () => void now())
  return {
    now: () => now(),
    close: async () => {
      stop()
      await under
    },
  }
}
