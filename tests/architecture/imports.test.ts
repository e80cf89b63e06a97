import { describe, expect, test } from 'vitest'
import { cycles, forbidden, importsOf, impurities, leaks } from './check.ts'
import { LAYERS } from './layers.ts'
import { type Source, sources } from './tree.ts'

const tree = sources(['app', 'lib', 'server', 'prisma'])

describe('the house', () => {
  test('I1 the check sees the house: every layer has files, and they import', () => {
    for (const layer of LAYERS)
      expect(tree.filter((source) => layer.holds.test(source.path)).length, layer.name).toBeGreaterThan(0)
    expect(tree.flatMap(importsOf).length).toBeGreaterThan(tree.length)
  })
  test('I1 no layer imports what it may not', () => expect(forbidden(tree)).toEqual([]))
  test('I2 no file imports itself by a detour', () => expect(cycles(tree)).toEqual([]))
  test('I3 lib/ has no clock, no dice and no reach into the world', () => expect(impurities(tree)).toEqual([]))
  test('I4 no server code reaches the browser', () => expect(leaks(tree)).toEqual([]))
})

describe('the check itself', () => {
  const file = (path: string, text: string): Source => ({ path, text })

  test.each([
    [
      'domain imports the plan',
      file('lib/domain/a.ts', "import { b } from '#lib/plan/b.ts'"),
      'lib/domain/a.ts (domain) may not import lib/plan/b.ts',
    ],
    [
      'scheduling imports the domain',
      file('lib/scheduling/a.ts', "import type { b } from '#lib/domain/b.ts'"),
      'lib/scheduling/a.ts (scheduling) may not import lib/domain/b.ts',
    ],
    [
      'the referee imports the engine',
      file('lib/scheduling/verify/a.ts', "import { b } from '#lib/scheduling/solve.ts'"),
      'lib/scheduling/verify/a.ts (verify) may not import lib/scheduling/solve.ts',
    ],
    [
      'siblings know each other',
      file('lib/order/a.ts', "export { b } from '#lib/plan/b.ts'"),
      'lib/order/a.ts (order) may not import lib/plan/b.ts',
    ],
    [
      'a screen plans by itself',
      file('app/a.tsx', "const b = await import('#lib/order/engine.ts')"),
      'app/a.tsx (app) may not import lib/order/engine.ts',
    ],
    [
      'a screen opens the database',
      file('app/a.tsx', "import { b } from '#prisma/client/client.ts'"),
      'app/a.tsx (app) may not import prisma/client/client.ts',
    ],
    [
      'lib uses a package of the server',
      file('lib/domain/a.ts', "import fs from 'node:fs'"),
      'lib/domain/a.ts may not use the package node:fs',
    ],
    ['an import climbs', file('lib/order/a.ts', "import { b } from '../domain/b.ts'"), 'lib/order/a.ts climbs to ../domain/b.ts'],
    ['a file stands outside every layer', file('lib/stray.ts', ''), 'lib/stray.ts is in no layer'],
  ])('I1 is seen to fail when %s', (_, source, complaint) => {
    expect(forbidden([source])).toEqual([complaint])
  })
  test('I2 is seen to fail on a ring of three', () => {
    const ring = ['a', 'b', 'c'].map((name, i, all) => file(`lib/plan/${name}.ts`, `import './${all[(i + 1) % 3]}.ts'`))
    expect(cycles(ring)).toEqual(['lib/plan/a.ts → lib/plan/b.ts → lib/plan/c.ts'])
  })
  test.each([
    'const t = Date.now()',
    'const t = new Date()',
    'const r = Math.random()',
    'const t = Temporal.Now.instant()',
    'fetch("/")',
    'setTimeout(f, 1)',
  ])('I3 is seen to fail on %s', (text) => expect(impurities([file('lib/plan/a.ts', text)])).toHaveLength(1))
  test('I4 is seen to fail by a detour, and not by a type or a server action', () => {
    const client = file(
      'app/a.tsx',
      "'use client'\nimport { b } from './b.ts'\nimport { act } from './act.ts'\nimport type { D } from '#server/d.ts'",
    )
    const detour = file('app/b.ts', "import { c } from '#server/c.ts'")
    const action = file('app/act.ts', "'use server'\nimport { c } from '#server/c.ts'")
    expect(leaks([client, detour, action])).toEqual(['app/a.tsx reaches server/c.ts by app/b.ts'])
  })
})
