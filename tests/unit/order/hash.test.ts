import { createHash } from 'node:crypto'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { encodeUtf8 } from 'lib0/string'
import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { canonicalJson, problemHash } from '#lib/order/hash.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'

const hex = (bytes: Uint8Array) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
const demo = demoEvening('2026-12-05')
const before = problemHash(demo)

const first = <T>(list: readonly T[], change: (item: T) => T): T[] =>
  list.map((item, index) => (index === 0 ? change(item) : item))

/** What browsers get of lib0; under Node it hands out Node's own. */
const inBrowsers = async (): Promise<(bytes: Uint8Array) => Uint8Array> => {
  const module: unknown = await import(pathToFileURL(resolve('node_modules/lib0/hash/sha256.js')).href)
  if (typeof module !== 'object' || module === null || !('digest' in module) || typeof module.digest !== 'function')
    throw new Error('lib0 has no digest of its own')
  const { digest } = module
  return (bytes) => digest(bytes)
}

describe('SHA-256', () => {
  test('O8 the hash is SHA-256 in browsers too: the FIPS 180-4 examples, and as Node on every length around a block', async () => {
    const digest = await inBrowsers()
    expect(hex(digest(encodeUtf8('abc')))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    expect(hex(digest(encodeUtf8('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')))).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    )
    for (let length = 0; length < 200; length += 1) {
      const bytes = new Uint8Array(length).map((_, index) => (index * 37 + length) % 256)
      expect(hex(digest(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
  })

  test('O8 it is of the problem with the evening’s id, date and zone', () => {
    const { problem } = toProblem(demo)
    const text = canonicalJson({ evening: demo.id, date: demo.date, zone: demo.zone, problem })
    expect(before).toBe(createHash('sha256').update(text).digest('hex'))
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify({ evening: demo.id, date: demo.date, zone: demo.zone, problem })))
  })

  test('O8 canonical JSON does not see the order of fields, nor fields without a value', () => {
    expect(canonicalJson({ b: [1, { d: null, c: 'é"' }], a: undefined })).toBe('{"b":[1,{"c":"é\\"","d":null}]}')
  })
})

describe('what a running order does not depend on leaves the hash as it is', () => {
  const changes: Record<string, (of: Evening) => Evening> = {
    'the evening’s name': (of) => ({ ...of, name: 'Another name' }),
    'a dish’s name': (of) => ({ ...of, dishes: first(of.dishes, (dish) => ({ ...dish, name: 'Sticks' })) }),
    'a note': (of) => ({ ...of, dishes: first(of.dishes, (dish) => ({ ...dish, notes: `${dish.notes} More caraway.` })) }),
    'what a step says': (of) => ({ ...of, steps: first(of.steps, (step) => ({ ...step, does: 'Twist and shout' })) }),
    'a sign of doneness': (of) => ({
      ...of,
      steps: first(of.steps, (step) => ({ ...step, until: { coreC: 60, sign: 'brown' } })),
    }),
    'a cook’s name': (of) => ({ ...of, cooks: first(of.cooks, (cook) => ({ ...cook, name: 'S.' })) }),
    'a course’s name and service': (of) => ({
      ...of,
      courses: first(of.courses, (course) => ({ ...course, name: 'Hello', service: 'platters' })),
    }),
    'who pours and who clears': (of) => ({
      ...of,
      courses: of.courses.map((course) => ({ ...course, pours: of.cooks[0]?.id, clears: of.cooks[1]?.id })),
    }),
    'an ingredient': (of) => ({ ...of, ingredients: of.ingredients.slice(1) }),
    'a drink': (of) => ({ ...of, drinks: [] }),
    'the guests': (of) => ({ ...of, guests: [] }),
    'the order of the file': (of) => ({
      ...of,
      steps: [...of.steps].reverse(),
      cooks: [...of.cooks].reverse(),
      dishes: [...of.dishes].reverse(),
    }),
    'an oven’s name': (of) => ({
      ...of,
      kitchens: first(of.kitchens, (kitchen) => ({
        ...kitchen,
        kit: kitchen.kit.map((kit) => (kit.kind === 'oven' ? { ...kit, name: 'The big one' } : kit)),
      })),
    }),
    'a duration said otherwise': (of) => ({
      ...of,
      steps: of.steps.map((step) => ({
        ...step,
        ways: step.ways.map((way) => ({ ...way, takes: { ...way.takes, most: way.takes.most.replace('PT1H10M', 'PT70M') } })),
      })),
    }),
  }
  test.each(Object.entries(changes))('O8 %s', (_, change) => {
    expect(change(demo)).not.toEqual(demo)
    expect(problemHash(change(demo))).toBe(before)
  })
})

describe('what it depends on changes the hash', () => {
  const changes: Record<string, (of: Evening) => Evening> = {
    'another evening': (of) => ({ ...of, id: 'other' }),
    'another date': (of) => ({ ...of, date: '2026-12-06' }),
    'another zone': (of) => ({ ...of, zone: 'Europe/Dublin' }),
    'more covers, more batches': (of) => ({ ...of, covers: 9 }),
    'a later sit-down': (of) => ({ ...of, sitDown: { day: 0, time: '19:45' } }),
    'a claim': (of) => ({ ...of, claims: [{ target: 'chicken', cook: 'piet' }] }),
    'a dish dropped': (of) => ({ ...of, dishes: first(of.dishes, (dish) => ({ ...dish, state: 'dropped' })) }),
    'a minute more': (of) => ({
      ...of,
      steps: first(of.steps, (step) => ({
        ...step,
        ways: step.ways.map((way) => ({ ...way, takes: { ...way.takes, likely: 'PT17M' } })),
      })),
    }),
    'a cook’s hours': (of) => ({ ...of, cooks: first(of.cooks, (cook) => ({ ...cook, presence: cook.presence.slice(1) })) }),
    'a fact of the night': (of) => ({ ...of, night: [{ step: 'pastry', done: '2026-12-04T18:00:00Z', by: 'salma' }] }),
    'kit gone': (of) => ({ ...of, kitchens: first(of.kitchens, (kitchen) => ({ ...kitchen, kit: kitchen.kit.slice(1) })) }),
    'courses in another order': (of) => ({
      ...of,
      courses: of.courses.map((course) => (course.id === 'main' ? { ...course, order: 'a9' } : course)),
    }),
  }
  test.each(Object.entries(changes))('O8 %s', (_, change) => {
    expect(problemHash(change(demo))).not.toBe(before)
  })

  test('O8 now and what was told', () => {
    expect(problemHash(demo, { now: '2026-12-05T18:00:00Z' })).not.toBe(before)
  })
})
