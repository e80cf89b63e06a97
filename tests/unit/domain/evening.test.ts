import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { published, schemas } from '#server/cli/schemas.ts'
import { readDocument } from '#tests/architecture/tree.ts'

type Loose = Record<string, unknown> & { [list: string]: Record<string, unknown>[] }
const lamb = (): Loose => JSON.parse(readFileSync(new URL('../../support/evenings/a-lamb.json', import.meta.url), 'utf8'))

/** The refused paths of evening A after `spoil` has been at it; it must have been a good evening before. */
const pathsAfter = (spoil: (evening: Loose) => void): string[] => {
  const evening = lamb()
  expect(parseEvening(evening).ok).toBe(true)
  spoil(evening)
  const parsed = parseEvening(evening)
  return parsed.ok ? [] : parsed.error.map((refusal) => refusal.path)
}

const at = (evening: Loose, path: string): Record<string, unknown> =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], evening) as Record<string, unknown>

describe('refusals name the field', () => {
  test.each<[string, (evening: Loose) => void, string]>([
    ['an unknown field at the top', (e) => Object.assign(e, { colour: 'red' }), 'colour'],
    [
      'an unknown field deep inside',
      (e) => Object.assign(at(e, 'steps.0.ways.0.takes'), { usual: 'PT1M' }),
      'steps[0].ways[0].takes.usual',
    ],
    ['a missing field', (e) => delete e.covers, 'covers'],
    ['a wrong type', (e) => Object.assign(at(e, 'dishes.1'), { yields: 'six' }), 'dishes[1].yields'],
    ['another format', (e) => Object.assign(e, { format: 'tableward/2' }), 'format'],
    ['a kit of no known kind', (e) => Object.assign(at(e, 'kitchens.0.kit.0'), { kind: 'grill' }), 'kitchens[0].kit[0].kind'],
    ['a duration in months', (e) => Object.assign(at(e, 'courses.0'), { clearing: 'P1M' }), 'courses[0].clearing'],
    [
      'a repeated touch without a length',
      (e) => Object.assign(at(e, 'steps.8.ways.0.touches.0'), { when: { every: 'soon' } }),
      'steps[8].ways[0].touches[0].when.every',
    ],
    ['a clock that does not exist', (e) => Object.assign(at(e, 'sitDown'), { time: '24:00' }), 'sitDown.time'],
    ['a date that does not exist', (e) => Object.assign(e, { date: '2026-02-30' }), 'date'],
    ['a zone that does not exist', (e) => Object.assign(e, { zone: 'Europe/Atlantis' }), 'zone'],
    ['a control character', (e) => Object.assign(e, { name: 'Lamb\u0007' }), 'name'],
    [
      'a source that is not on the web',
      (e) => Object.assign(at(e, 'dishes.0'), { source: 'javascript:alert(1)' }),
      'dishes[0].source',
    ],
  ])('D1 %s', (_, spoil, path) => {
    expect(pathsAfter(spoil)).toEqual([path])
  })

  test.each<[string, (evening: Loose) => void, string]>([
    ['an id used twice across nouns', (e) => Object.assign(at(e, 'cooks.0'), { id: 'soup' }), 'dishes[0].id'],
    ['a dish of no course', (e) => Object.assign(at(e, 'dishes.0'), { course: 'none' }), 'dishes[0].course'],
    ['a step after no step', (e) => Object.assign(at(e, 'steps.1.after.0'), { step: 'none' }), 'steps[1].after[0].step'],
    ['a host kitchen that is not there', (e) => Object.assign(e, { host: 'none' }), 'host'],
    ['a claim of nothing', (e) => e.claims?.push({ target: 'none', cook: 'kim' }), 'claims[0].target'],
    ['a claim by nobody', (e) => e.claims?.push({ target: 'soup', cook: 'none' }), 'claims[0].cook'],
    [
      'an oven that is not there',
      (e) => Object.assign(at(e, 'steps.8.ways.0.uses.0'), { oven: 'none' }),
      'steps[8].ways[0].uses[0].oven',
    ],
    ['a fact about no step', (e) => e.night?.push({ step: 'none', by: 'kim' }), 'night[0].step'],
  ])('D2 %s', (_, spoil, path) => {
    expect(pathsAfter(spoil)).toContain(path)
  })

  test.each<[string, (evening: Loose) => void, string]>([
    [
      'least longer than likely',
      (e) => Object.assign(at(e, 'steps.0.ways.0.takes'), { least: 'PT2H' }),
      'steps[0].ways[0].takes',
    ],
    ['likely longer than most', (e) => Object.assign(at(e, 'courses.0.eating'), { most: 'PT1M' }), 'courses[0].eating'],
    [
      'a presence that ends before it starts',
      (e) => Object.assign(at(e, 'cooks.0.presence.0'), { to: { day: -3, time: '09:00' } }),
      'cooks[0].presence[0].to',
    ],
    [
      'a window that ends before it starts',
      (e) => Object.assign(at(e, 'steps.0'), { latest: { day: -1, time: '16:59' } }),
      'steps[0].latest',
    ],
    [
      'a temperature window upside down',
      (e) => Object.assign(at(e, 'steps.8.ways.0.uses.0'), { highC: 100 }),
      'steps[8].ways[0].uses[0].highC',
    ],
    [
      'a lag whose most is shorter than its least',
      (e) => Object.assign(at(e, 'steps.3.after.0'), { most: 'PT1H' }),
      'steps[3].after[0].most',
    ],
    [
      'upTo on a step that is not left alone',
      (e) => Object.assign(at(e, 'steps.0.ways.0'), { upTo: 'PT2H' }),
      'steps[0].ways[0].upTo',
    ],
    ['upTo shorter than most', (e) => Object.assign(at(e, 'steps.8.ways.0'), { upTo: 'PT5H' }), 'steps[8].ways[0].upTo'],
    ['guests after sit-down', (e) => Object.assign(at(e, 'guestsFrom'), { time: '21:00' }), 'guestsFrom'],
  ])('D3 %s', (_, spoil, path) => {
    expect(pathsAfter(spoil)).toEqual([path])
  })

  test('D4 a dish of another kitchen that nobody carries', () => {
    const spoil = (e: Loose) => {
      e.kitchens?.push({ id: 'flat', name: 'The flat', toTable: 'PT20M', kit: [] })
      Object.assign(at(e, 'dishes.3'), { kitchen: 'flat' })
    }
    expect(pathsAfter(spoil)).toEqual(['dishes[3].kitchen'])
  })
})

test('D5 an evening survives printing and parsing, and prints to the same bytes', () => {
  const first = parseEvening(lamb())
  if (!first.ok) throw new Error('evening A was refused')
  const printed = printEvening(first.value)
  const second = parseEvening(JSON.parse(printed))
  expect(second).toEqual(first)
  expect(second.ok && printEvening(second.value)).toBe(printed)
})

test('D6 the published JSON Schemas are those of the code (npm run schemas writes them)', () => {
  const now = schemas()
  expect(Object.keys(now).length).toBeGreaterThan(0)
  for (const [file, text] of Object.entries(now)) expect(published(file), file).toBe(text)
})

test('D5 the example in docs/ is an evening, byte for byte as it would be written', () => {
  const text = readDocument('docs/example-evening.json')
  const parsed = parseEvening(JSON.parse(text))
  expect(parsed.ok && printEvening(parsed.value)).toBe(text)
})
