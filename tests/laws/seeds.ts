import { expect, vi } from 'vitest'

/**
 * The laws together look at some 2,000 random evenings and problems. `SEEDS=20000` is the long run: every law takes ten times
 * as many seeds, and time. `SEED=17` looks at that one alone.
 */
const TIMES = Number(process.env.SEEDS ?? 2_000) / 2_000

/** The machine may be busy with other tests. */
vi.setConfig({ testTimeout: 240_000 * Math.max(1, TIMES) })

/** How many seeds a law takes that takes so many of the 2,000. */
export const shareOf = (count: number): number => Math.max(1, Math.round(count * TIMES))

/** Seeds from `from` on, as many as the law's share is, or only the one in the environment. */
export const seeds = (from: number, count: number): number[] => fixedSeeds(from, shareOf(count))

/** As many in the long run too: for what is said of all of them together. */
export const fixedSeeds = (from: number, count: number): number[] => {
  const only = process.env.SEED
  return only === undefined ? Array.from({ length: count }, (_, at) => from + at) : [Number(only)]
}

/** Holds the law on every seed and names each one that breaks it or throws, with what it says. `null` is kept. */
export const holdsOnAll = (all: readonly number[], law: (seed: number) => string | null): void => {
  const broken = all.flatMap((seed) => {
    const said = saidOf(law, seed)
    return said === null ? [] : [`seed ${seed}: ${said}`]
  })
  expect(all.length).toBeGreaterThan(0)
  expect(broken).toEqual([])
}

const saidOf = (law: (seed: number) => string | null, seed: number): string | null => {
  try {
    return law(seed)
  } catch (thrown) {
    return `threw ${thrown instanceof Error ? thrown.stack : String(thrown)}`
  }
}
