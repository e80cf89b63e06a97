import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import * as Y from 'yjs'
import { checkEvening } from '#lib/domain/check.ts'
import { Evening } from '#lib/domain/evening.ts'
import { ENTRY_ROOTS, FIELDS, ROOTS } from '#lib/plan/layout.ts'
import { readAhead, readPlan } from '#lib/plan/read.ts'
import { inReadingOrder } from '#lib/plan/reading-order.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { copyOf, planOf } from './open-plan.ts'

const sound = (evening: Evening): void => {
  expect(Evening.safeParse(evening).error).toBeUndefined()
  expect(checkEvening(evening)).toEqual([])
}

describe('writing and reading', () => {
  for (const name of ['a-lamb', 'c-pork'])
    test(`L1 ${name} is read as it was written, in reading order and without guests`, () => {
      const evening = readEvening(name)
      const reading = readPlan(copyOf(planOf(evening)))
      expect(reading.reports).toEqual([])
      expect(reading.evening).toEqual(inReadingOrder(evening))
      expect(reading.meta).toEqual({ version: 1, minClient: 1, epoch: 'epoch-1', evening: evening.id })
    })

  test('L1 claims, facts of the night and optional fields survive', () => {
    const lamb = readEvening('a-lamb')
    const [step, dish, course, cook] = [lamb.steps[0], lamb.dishes[0], lamb.courses[0], lamb.cooks[0]]
    if (!step || !dish || !course || !cook) throw new Error('the evening has no step')
    const evening: Evening = {
      ...lamb,
      claims: [
        { target: step.id, cook: cook.id },
        { target: dish.id, cook: cook.id, also: [cook.id] },
      ],
      night: [
        { step: step.id, started: '2026-11-14T17:00:00Z', by: cook.id },
        { step: step.id, done: '2026-11-14T17:20:00Z', by: cook.id },
        { sitDown: '2026-11-14T19:47:10Z', by: cook.id },
      ],
      guests: [
        { id: 'g', name: 'G', reply: 'yes', child: false, portion: 1, needs: null, drinks: 'unknown', drives: false, words: '' },
      ],
    }
    const { evening: read } = readPlan(copyOf(planOf(evening)))
    expect(read).toEqual(inReadingOrder(evening))
    expect(read.guests).toEqual([])
    expect(read.night).toContainEqual({
      step: step.id,
      started: '2026-11-14T17:00:00Z',
      done: '2026-11-14T17:20:00Z',
      by: cook.id,
    })
    expect(JSON.stringify(copyOf(planOf(evening)).toJSON())).not.toContain('"portion"')
  })

  test('L1 what is read ahead, entry by entry, is not read again, and gives the same reading', () => {
    const evening = readEvening('a-lamb')
    const doc = copyOf(planOf(evening))
    const ways = FIELDS.steps.get('ways')?.schema
    if (!ways) throw new Error('steps have no ways')
    const read = vi.spyOn(ways, 'safeParse')
    const pieces = [...readAhead(doc)]
    expect(pieces).toHaveLength(ENTRY_ROOTS.reduce((sum, root) => sum + doc.getMap(root).size, 0))
    expect(read.mock.calls).toHaveLength(evening.steps.length)
    expect(readPlan(doc)).toEqual(readPlan(copyOf(planOf(evening))))
    // Once more for the copy alone.
    expect(read.mock.calls).toHaveLength(2 * evening.steps.length)
    read.mockRestore()
  })

  test('L1 an entry that did not change is the same object at the next reading', () => {
    const doc = planOf(readEvening('a-lamb'))
    const before = readPlan(doc).evening
    const dish = doc.getMap('dishes').get(before.dishes[0]?.id ?? '') as Y.Map<unknown>
    dish.set('name', 'Another name')
    const after = readPlan(doc).evening
    expect(after.dishes[0]?.name).toBe('Another name')
    expect(after.dishes[1]).toBe(before.dishes[1])
    expect(after.steps.every((step, index) => step === before.steps[index])).toBe(true)
  })

  test('L1 a claim that did not change is the same object at the next reading, and what did change is read anew', () => {
    const lamb = readEvening('a-lamb')
    const [first, second] = lamb.steps
    const [cook, other] = lamb.cooks
    if (!first || !second || !cook || !other) throw new Error('the evening has no two steps and cooks')
    const claims = [first, second].map(({ id }) => ({ target: id, cook: cook.id }))
    const doc = planOf({ ...lamb, claims })
    const before = readPlan(doc).evening
    const of = (evening: Evening, step: string) => evening.claims.find(({ target }) => target === step)
    doc.getMap('claims').set(first.id, { cook: other.id })
    doc.getMap('evening').set('covers', before.covers + 1)
    const after = readPlan(doc).evening
    expect(of(after, first.id)).toEqual({ target: first.id, cook: other.id })
    expect(of(after, second.id)).toBeDefined()
    expect(of(after, second.id)).toBe(of(before, second.id))
    expect(after.covers).toBe(before.covers + 1)
    expect(after.sitDown).toBe(before.sitDown)
  })
})

describe('reading what does not fit together', () => {
  const entry = (doc: Y.Doc, root: string, id: string): Y.Map<unknown> => {
    const found = doc.getMap(root).get(id)
    if (!(found instanceof Y.Map)) throw new Error(`no ${root} ${id}`)
    return found
  }
  const lamb = readEvening('a-lamb')

  test('L2 an empty document reads as an evening in which nothing stands yet', () => {
    const reading = readPlan(new Y.Doc())
    sound(reading.evening)
    expect(reading.meta).toBeNull()
    expect(reading.reports).toEqual([])
  })

  test('L2 what belongs to a removed course is left out with it, silently', () => {
    const doc = planOf(lamb)
    const course = lamb.courses[1]?.id ?? ''
    entry(doc, 'courses', course).set('gone', true)
    const reading = readPlan(doc)
    sound(reading.evening)
    expect(reading.evening.dishes.some((dish) => dish.course === course)).toBe(false)
    const dishes = new Set(reading.evening.dishes.map((dish) => dish.id))
    expect(reading.evening.steps.every((step) => step.dish === null || dishes.has(step.dish))).toBe(true)
    expect(reading.reports.filter((why) => !why.includes('waits for'))).toEqual([])
  })

  test('L2 steps that wait for each other are cut at the same place on every device', () => {
    const doc = planOf(lamb)
    const [a, b, c] = lamb.steps.slice(0, 3).map((step) => step.id) as [string, string, string]
    const waitFor = (step: string) => [{ step, from: 'end', least: 'PT0S', kind: 'quality' }]
    entry(doc, 'steps', a).set('after', waitFor(b))
    entry(doc, 'steps', b).set('after', waitFor(c))
    entry(doc, 'steps', c).set('after', waitFor(a))
    const here = readPlan(doc)
    const there = readPlan(copyOf(doc))
    sound(here.evening)
    expect(there).toEqual(here)
    const left = here.evening.steps.filter((step) => [a, b, c].includes(step.id)).flatMap((step) => step.after)
    expect(left).toHaveLength(2)
    expect(here.reports.join()).toContain('in a circle')
  })

  test('L2 a dish of another kitchen that nobody carries is made beside the table until somebody does', () => {
    const doc = planOf(lamb)
    const away = new Y.Map<unknown>(Object.entries({ name: 'Away', toTable: 'PT20M', kit: [] }))
    doc.getMap('kitchens').set('away', away)
    entry(doc, 'dishes', lamb.dishes[0]?.id ?? '').set('kitchen', 'away')
    const reading = readPlan(doc)
    sound(reading.evening)
    expect(reading.evening.dishes[0]?.kitchen).toBe(lamb.host)
    expect(reading.reports.join()).toContain('No step carries')
  })

  test('L2 two cooks typing at once beyond the limit of a text lose no letter in the document, and the reading is cut', () => {
    const doc = planOf(lamb)
    const id = lamb.steps[0]?.id ?? ''
    const does = entry(doc, 'steps', id).get('does') as Y.Text
    does.insert(0, 'x'.repeat(390))
    does.insert(0, `a\u0000b\nc${'y'.repeat(200)}`)
    const reading = readPlan(doc)
    sound(reading.evening)
    expect(reading.evening.steps.find((step) => step.id === id)?.does).toHaveLength(400)
    expect(reading.evening.steps.find((step) => step.id === id)?.does.startsWith('a b c')).toBe(true)
    expect(does.length).toBeGreaterThan(590)
  })
})

/** Values that may stand anywhere in a document: nearly right ones, wrong ones and ones of other types. */
const words = [
  'a',
  'b',
  'c',
  'kim',
  'home',
  'oven',
  'PT5M',
  'PT1H',
  'PT0S',
  '19:00',
  'quality',
  'end',
  'hot',
  '',
  '\u0007',
  '__proto__',
]
const piece = fc.oneof(
  fc.constantFrom(...words),
  fc.integer({ min: -3, max: 700 }),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom({ day: 0, time: '19:00' }, { day: -1, time: '08:30' }, { least: 'PT9M', likely: 'PT5M', most: 'PT7M' }),
  fc.constantFrom(
    [{ step: 'a', from: 'end', least: 'PT9M', most: 'PT1M', kind: 'quality' }],
    [{ step: 'b', from: 'start', least: 'PT0S', kind: 'safety' }],
    [{ id: 'oven', kind: 'oven', name: '', shelves: 1, maxC: 250 }],
    [{ kitchen: 'home', from: { day: 0, time: '10:00' }, to: { day: 0, time: '09:00' } }],
  ),
  fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<unknown>,
)
const FIELD_NAMES = [...new Set([...ENTRY_ROOTS.flatMap((root) => [...FIELDS[root].keys()]), 'gone', 'order', 'zz'])]

/** One blow at a document: overwrites, removes, or puts a type where another is wanted. */
const blow = fc.record({
  root: fc.constantFrom(...ROOTS, 'guests'),
  pick: fc.nat(200),
  field: fc.constantFrom(...FIELD_NAMES),
  how: fc.constantFrom('set', 'set', 'set', 'delete', 'text', 'array', 'entry', 'list', 'clone', 'drop', 'subdoc', 'bytes'),
  value: piece,
})
type Blow = { root: string; pick: number; field: string; how: string; value: unknown }

const strike = (doc: Y.Doc, { root, pick, field, how, value }: Blow): void => {
  const map: Y.Map<unknown> = doc.getMap(root)
  const keys = [...map.keys()]
  const key = keys[pick % Math.max(1, keys.length)] ?? words[pick % words.length] ?? 'a'
  const found = map.get(key)
  const target: Y.Map<unknown> = found instanceof Y.Map ? found : map
  const name = found instanceof Y.Map ? field : key
  if (how === 'set') target.set(name, value)
  if (how === 'delete') target.delete(name)
  if (how === 'text') target.set(name, new Y.Text(String(value)))
  if (how === 'array') target.set(name, Y.Array.from([String(value)]))
  if (how === 'entry') map.set(words[pick % words.length] ?? 'a', new Y.Map<unknown>([[field, value]]))
  if (how === 'list') map.set(key, value)
  if (how === 'clone' && found instanceof Y.Map && ![...found.values()].some((one) => one instanceof Y.Doc))
    map.set(words[pick % 5] ?? 'a', found.clone())
  if (how === 'drop') map.delete(key)
  if (how === 'subdoc') target.set(name, new Y.Doc())
  if (how === 'bytes') target.set(name, new Uint8Array([1, 2, 3]))
}

describe('reading is total', () => {
  const lambs = [readEvening('a-lamb'), readEvening('c-pork')]
  test('L2 whatever 1 to 40 random blows do to a document, its reading is a sound evening, the same on every device', () => {
    let reported = 0
    fc.assert(
      fc.property(fc.nat(2), fc.array(blow, { minLength: 1, maxLength: 40 }), (which, blows) => {
        const evening = lambs[which]
        const doc = evening ? planOf(evening) : new Y.Doc()
        for (const one of blows) strike(doc, one)
        const reading = readPlan(doc)
        sound(reading.evening)
        reported += reading.reports.length
        expect(readPlan(copyOf(doc))).toEqual(reading)
      }),
      { numRuns: 400 },
    )
    expect(reported).toBeGreaterThan(400)
  })

  test('L2 roots of other types are read as if they were empty', () => {
    for (const root of ROOTS) {
      const doc = new Y.Doc()
      doc.getArray(root).insert(0, [1])
      sound(readPlan(doc).evening)
      sound(readPlan(copyOf(doc)).evening)
    }
  })
})
