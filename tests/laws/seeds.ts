import { expect } from 'vitest'

/** Seeds from `from` on, or only the one in the environment: `SEED=17 npx vitest run -c tests/vitest.config.ts tests/laws`. */
export const seeds = (from: number, count: number): number[] => {
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
