import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import * as Y from 'yjs'
import { OrderKey } from '#lib/domain/atoms.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Step } from '#lib/domain/menu.ts'
import { addStep } from '#lib/plan/commands/add.ts'
import { removeLag, removeWay, setLag, setUses, setWay } from '#lib/plan/commands/method.ts'
import { moveCourse, moveDish, moveStep } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { renameDish, setEvening, setFields } from '#lib/plan/commands/set.ts'
import { textDifference } from '#lib/plan/commands/text.ts'
import { keysFor, type Place, spreadKeys } from '#lib/plan/order-keys.ts'
import { readPlan } from '#lib/plan/read.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { copyOf, exchange, planOf } from './open-plan.ts'

const lamb = readEvening('a-lamb')
const [course1, course2] = lamb.courses
const [dish1, dish2] = lamb.dishes
const [step1, step2, step3] = lamb.steps
if (!course1 || !course2 || !dish1 || !dish2 || !step1 || !step2 || !step3) throw new Error('the evening is too small')

const { order: _order, ...plainStep } = step1
const newStep = (id: string): Omit<Step, 'order'> => ({ ...plainStep, id, does: `Do ${id}`, after: [], dish: dish1.id })
const stepsOf = (doc: Y.Doc, dish: string) => readPlan(doc).evening.steps.filter((step) => step.dish === dish)
const stepOf = (doc: Y.Doc, id: string) => readPlan(doc).evening.steps.find((step) => step.id === id)
const updatesOf = (doc: Y.Doc): { count: () => number } => {
  let count = 0
  doc.on('update', () => {
    count += 1
  })
  return { count: () => count }
}
const last: Place = { kind: 'last' }

describe('commands', () => {
  test('L3 an added step stands where it was wanted, in one update', () => {
    const doc = planOf(lamb)
    const updates = updatesOf(doc)
    expect(addStep(doc, newStep('new-1'), { kind: 'after', id: step1.id })).toEqual({ ok: true, value: 'new-1' })
    expect(updates.count()).toBe(1)
    const ids = stepsOf(doc, dish1.id).map((step) => step.id)
    expect(ids.indexOf('new-1')).toBe(ids.indexOf(step1.id) + 1)
    addStep(doc, newStep('new-2'), { kind: 'first' })
    addStep(doc, newStep('new-3'))
    expect(stepsOf(doc, dish1.id)[0]?.id).toBe('new-2')
    expect(stepsOf(doc, dish1.id).at(-1)?.id).toBe('new-3')
    expect(stepOf(doc, 'new-1')?.does).toBe('Do new-1')
  })

  test('L3 what the schema refuses is not done, and the refusal names the path', () => {
    const doc = planOf(lamb)
    const updates = updatesOf(doc)
    const refused = addStep(doc, { ...newStep('new'), does: 'two\nlines' })
    expect(refused).toMatchObject({ ok: false, error: { kind: 'refused', refusals: [{ path: 'does' }] } })
    expect(setFields(doc, 'dishes', dish1.id, { name: 'Fine', yields: -1 })).toMatchObject({
      ok: false,
      error: { kind: 'refused', refusals: [{ path: 'yields' }] },
    })
    expect(setFields(doc, 'dishes', dish1.id, { name: undefined })).toMatchObject({ ok: false })
    expect(setFields(doc, 'dishes', 'nobody', { name: 'x' })).toEqual({
      ok: false,
      error: { kind: 'unknown-entry', root: 'dishes', id: 'nobody' },
    })
    expect(addStep(doc, newStep(dish1.id))).toEqual({ ok: false, error: { kind: 'id-taken', id: dish1.id } })
    expect(addStep(doc, newStep('oven'))).toEqual({ ok: false, error: { kind: 'id-taken', id: 'oven' } })
    expect(setEvening(doc, { covers: 0 })).toMatchObject({ ok: false, error: { refusals: [{ path: 'covers' }] } })
    expect(updates.count()).toBe(0)
  })

  test('L3 fields are set all at once, an optional one is taken away, an equal one is not written', () => {
    const doc = planOf(lamb)
    const updates = updatesOf(doc)
    expect(setFields(doc, 'dishes', dish1.id, { name: 'Soup', portions: 8, notes: 'Salt late.' }).ok).toBe(true)
    expect(readPlan(doc).evening.dishes[0]).toMatchObject({ name: 'Soup', portions: 8, notes: 'Salt late.' })
    expect(setFields(doc, 'dishes', dish1.id, { portions: undefined }).ok).toBe(true)
    expect(readPlan(doc).evening.dishes[0]).not.toHaveProperty('portions')
    expect(updates.count()).toBe(2)
    renameDish(doc, dish1.id, 'Soup')
    expect(updates.count()).toBe(2)
    expect(setEvening(doc, { covers: 9, name: 'Nine' }).ok).toBe(true)
    expect(readPlan(doc).evening).toMatchObject({ covers: 9, name: 'Nine' })
  })

  test('L3 D5 how many drink alcohol is said and taken back; until it is said the plan has no number', () => {
    const doc = planOf(lamb)
    expect(readPlan(doc).evening).not.toHaveProperty('drinkers')
    expect(setEvening(doc, { drinkers: 0 }).ok).toBe(true)
    expect(readPlan(doc).evening.drinkers).toBe(0)
    expect(setEvening(doc, { drinkers: 61 })).toMatchObject({ ok: false, error: { refusals: [{ path: 'drinkers' }] } })
    expect(setEvening(doc, { drinkers: undefined }).ok).toBe(true)
    expect(readPlan(doc).evening).not.toHaveProperty('drinkers')
  })

  test('L3 ways, uses and waits of a step', () => {
    const doc = planOf(lamb)
    const way = step1.ways[0]
    if (!way) throw new Error('no way')
    expect(setWay(doc, step1.id, 1, { ...way, cooks: 2 }).ok).toBe(true)
    expect(setUses(doc, step1.id, 1, [{ kind: 'worktop', places: 3 }]).ok).toBe(true)
    expect(stepOf(doc, step1.id)?.ways[1]).toMatchObject({ cooks: 2, uses: [{ kind: 'worktop', places: 3 }] })
    expect(setWay(doc, step1.id, 7, way)).toMatchObject({ ok: false })
    expect(removeWay(doc, step1.id, 0).ok).toBe(true)
    expect(removeWay(doc, step1.id, 0)).toMatchObject({ ok: false, error: { kind: 'refused' } })
    expect(setLag(doc, step1.id, { step: step3.id, from: 'end', least: 'PT1M', kind: 'quality' }).ok).toBe(true)
    expect(setLag(doc, step1.id, { step: step3.id, from: 'end', least: 'PT2M', kind: 'quality' }).ok).toBe(true)
    expect(setLag(doc, step1.id, { step: step1.id, from: 'end', least: 'PT2M', kind: 'quality' })).toMatchObject({ ok: false })
    const stored = () => (doc.getMap('steps').get(step1.id) as Y.Map<{ step: string; least: string }[]>).get('after') ?? []
    expect(stored().filter((lag) => lag.step === step3.id)).toMatchObject([{ least: 'PT2M' }])
    removeLag(doc, step1.id, step3.id)
    expect(stored().some((lag) => lag.step === step3.id)).toBe(false)
  })

  test('L3 a move is key and parent in one update; one of two concurrent moves wins everywhere', () => {
    const doc = planOf(lamb)
    const other = copyOf(doc)
    const updates = updatesOf(doc)
    expect(moveDish(doc, dish1.id, course2.id, { kind: 'first' }).ok).toBe(true)
    expect(updates.count()).toBe(1)
    expect(moveStep(other, step1.id, dish2.id, last).ok).toBe(true)
    expect(moveStep(doc, step1.id, null, last).ok).toBe(true)
    expect(moveCourse(other, course2.id, { kind: 'first' }).ok).toBe(true)
    expect(moveDish(doc, dish1.id, 'nowhere', last)).toMatchObject({ ok: false, error: { root: 'courses' } })
    exchange(doc, other)
    const reading = readPlan(doc)
    expect(readPlan(other)).toEqual(reading)
    expect(checkEvening(reading.evening)).toEqual([])
    expect(reading.evening.courses[0]?.id).toBe(course2.id)
    expect(reading.evening.dishes[0]).toMatchObject({ id: dish1.id, course: course2.id })
    expect([null, dish2.id]).toContain(stepOf(doc, step1.id)?.dish)
  })

  test('L3 a removed entry keeps what others change of it and comes back with it', () => {
    const doc = planOf(lamb)
    const other = copyOf(doc)
    expect(remove(doc, 'dishes', dish1.id).ok).toBe(true)
    expect(renameDish(other, dish1.id, 'Renamed meanwhile').ok).toBe(true)
    exchange(doc, other)
    expect(readPlan(doc).evening.dishes.some((dish) => dish.id === dish1.id)).toBe(false)
    expect(renameDish(doc, dish1.id, 'Not there')).toMatchObject({ ok: false })
    expect(restore(other, 'dishes', dish1.id).ok).toBe(true)
    exchange(doc, other)
    expect(readPlan(doc).evening.dishes.find((dish) => dish.id === dish1.id)?.name).toBe('Renamed meanwhile')
    expect(readPlan(doc).evening.steps).toHaveLength(lamb.steps.length)
  })

  test('L3 two cooks typing in one text keep both their words', () => {
    const doc = planOf(lamb)
    setFields(doc, 'dishes', dish1.id, { notes: 'Warm the bowls.' })
    const other = copyOf(doc)
    setFields(doc, 'dishes', dish1.id, { notes: 'Warm the six bowls.' })
    setFields(other, 'dishes', dish1.id, { notes: 'Warm the bowls. Salt late.' })
    exchange(doc, other)
    expect(readPlan(doc).evening.dishes[0]?.notes).toBe('Warm the six bowls. Salt late.')
    expect(readPlan(other).evening.dishes[0]?.notes).toBe('Warm the six bowls. Salt late.')
  })

  test('L3 the change of a text is its shortest stretch and cuts no letter in two', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 12 }), fc.string({ unit: 'binary', maxLength: 12 }), (before, after) => {
        const { at, cut, put } = textDifference(before, after)
        expect(before.slice(0, at) + put + before.slice(at + cut)).toBe(after)
        const text = new Y.Doc().getText('t')
        text.insert(0, before)
        if (cut > 0) text.delete(at, cut)
        if (put) text.insert(at, put)
        expect(text.toString()).toBe(after)
      }),
    )
    expect(textDifference('a😀b', 'a😁b')).toEqual({ at: 1, cut: 2, put: '😁' })
    expect(textDifference('bowls', 'six bowls')).toEqual({ at: 0, cut: 0, put: 'six ' })
  })
})

describe('order keys', () => {
  test('L4 keys fit the schema and put the entry where it was wanted, whatever keys its siblings have', () => {
    const key = fc.stringMatching(/^[0-9A-Za-z]{1,64}$/)
    const made = fc.constantFrom(...spreadKeys(70))
    let respread = 0
    fc.assert(
      fc.property(fc.array(fc.oneof(made, key), { maxLength: 8 }), fc.nat(8), (orders, at) => {
        const siblings = orders.toSorted((a, b) => (a < b ? -1 : 1)).map((order, n) => ({ id: `s${n}`, order }))
        const after = siblings[at % (siblings.length + 1)]
        const place: Place = after ? { kind: 'after', id: after.id } : { kind: 'first' }
        const keys = keysFor(siblings, 'new', place)
        if (keys.size > 1) respread += 1
        for (const one of keys.values()) expect(OrderKey.safeParse(one).success).toBe(true)
        const placed = [...siblings, { id: 'new', order: '' }].map(({ id, order }) => ({ id, order: keys.get(id) ?? order }))
        const ids = placed
          .toSorted((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : a.id < b.id ? -1 : 1))
          .map((one) => one.id)
        const wanted = siblings.map((one) => one.id)
        wanted.splice(after ? siblings.indexOf(after) + 1 : 0, 0, 'new')
        if (keys.size > 1 || new Set(orders).size === orders.length) expect(ids).toEqual(wanted)
      }),
      { numRuns: 2000 },
    )
    expect(respread).toBeGreaterThan(20)
  })

  test('L4 two hundred insertions at one place stay within 64 letters', () => {
    let siblings = spreadKeys(2).map((order, n) => ({ id: `s${n}`, order }))
    for (let n = 0; n < 200; n += 1) {
      const keys = keysFor(siblings, `n${n}`, { kind: 'after', id: 's0' })
      siblings = [...siblings, { id: `n${n}`, order: '' }]
        .map(({ id, order }) => ({ id, order: keys.get(id) ?? order }))
        .toSorted((a, b) => (a.order < b.order ? -1 : 1))
      expect(siblings[1]?.id).toBe(`n${n}`)
      expect(siblings.every((one) => OrderKey.safeParse(one.order).success)).toBe(true)
    }
  })
})
