import { defineConfig } from 'vitest/config'

/** Tests that leave nothing behind in their process: one reads the modules once for many files. */
const SHARED = [
  'tests/unit/{alerts,domain,drinks,learning,night,order,plan,planner,potluck,quantities,recipes,safety,scheduling,screens,server,sharing,shopping,table,verify}/**/*.test.{ts,tsx}',
  'tests/laws/*.test.ts',
  'tests/contract/{copy-dish,dish-page,fetch-page,recipe-page,step-editor,sync-*,update-log}.test.ts',
]

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'shared', include: SHARED, isolate: false } },
      {
        extends: true,
        test: { name: 'whole', include: ['tests/{unit,laws,contract,architecture}/**/*.test.{ts,tsx}'], exclude: SHARED },
      },
    ],
  },
})
