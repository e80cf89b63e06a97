import { defineConfig } from 'vitest/config'

/** Tests of pure code alone: one process reads the modules once for many files. */
const PURE = ['tests/unit/{domain,drinks,night,order,plan,quantities,recipes,safety,scheduling,table,verify}/**/*.test.{ts,tsx}']

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      {
        extends: true,
        test: { name: 'whole', include: ['tests/{unit,laws,contract,architecture}/**/*.test.{ts,tsx}'], exclude: PURE },
      },
    ],
  },
})
