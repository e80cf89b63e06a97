import { describe, expect, test } from 'vitest'
import type * as Y from 'yjs'
import { copyStep } from '#lib/plan/commands/copy-step.ts'
import { setEach } from '#lib/plan/commands/set.ts'
import { splitStep } from '#lib/plan/commands/split-step.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { planOf } from './open-plan.ts'

const lamb = readEvening('a-lamb')
const waiters = (doc: Y.Doc, id: string) =>
  readPlan(doc)
    .evening.steps.filter((step) => step.after.some((lag) => lag.step === id))
    .map((step) => step.id)
const stepsOf = (doc: Y.Doc, dish: string) => readPlan(doc).evening.steps.filter((step) => step.dish === dish)
const ids = (doc: Y.Doc, dish: string) => stepsOf(doc, dish).map((step) => step.id)
const countUpdates = (doc: Y.Doc) => {
  let count = 0
  doc.on('update', () => {
    count += 1
  })
  return () => count
}

const [b1] = lamb.steps.filter((step) => step.id === 'B1')
if (!b1) throw new Error('the evening is too small')
const { order: _order, after: _after, dish: _dish, ...then } = { ...b1, id: 'new', does: 'Then brown it' }

describe('one step out of another', () => {
  test('L3 a copy stands right after its step and says the same, but under its own id', () => {
    const doc = planOf(lamb)
    const updates = countUpdates(doc)
    expect(copyStep(doc, 'B1', 'copy')).toEqual({ ok: true, value: 'copy' })
    expect(updates()).toBe(1)
    const [first, second] = stepsOf(doc, 'lamb')
    expect([first?.id, second?.id]).toEqual(['B1', 'copy'])
    expect({ ...second, id: 'B1', order: first?.order }).toEqual(first)
    expect(copyStep(doc, 'nobody', 'x')).toMatchObject({ ok: false, error: { kind: 'unknown-entry' } })
    expect(copyStep(doc, 'B1', 'B2')).toEqual({ ok: false, error: { kind: 'id-taken', id: 'B2' } })
  })

  test('L3 a split is one update: the new step waits for the old one, and who waited for its end waits for the new one', () => {
    const doc = planOf(lamb)
    const before = waiters(doc, 'B1')
    expect(before).toEqual(['B2'])
    const updates = countUpdates(doc)
    expect(splitStep(doc, 'B1', 'Salt it', then)).toEqual({ ok: true, value: 'new' })
    expect(updates()).toBe(1)
    expect(ids(doc, 'lamb').slice(0, 3)).toEqual(['B1', 'new', 'B2'])
    expect(stepsOf(doc, 'lamb')[0]?.does).toBe('Salt it')
    expect(waiters(doc, 'B1')).toEqual(['new'])
    expect(waiters(doc, 'new')).toEqual(before)
    const lag = (id: string, step: string) =>
      readPlan(doc)
        .evening.steps.find((one) => one.id === id)
        ?.after.find((one) => one.step === step)
    expect(lag('B2', 'new')).toEqual({ ...lamb.steps.find((step) => step.id === 'B2')?.after[0], step: 'new' })
    expect(readPlan(doc).reports).toEqual([])
  })

  test('L5 a split is undone at once and exactly', () => {
    const doc = planOf(lamb)
    const undo = openUndo(doc)
    const { evening } = readPlan(doc)
    undo.edit((plan) => splitStep(plan, 'B1', 'Salt it', then))
    undo.undo()
    expect(readPlan(doc).evening).toEqual(evening)
  })

  test('L3 nothing is split when the step is gone, the id is taken or the words are too long', () => {
    const doc = planOf(lamb)
    const { evening } = readPlan(doc)
    expect(splitStep(doc, 'nobody', 'x', then)).toMatchObject({ ok: false })
    expect(splitStep(doc, 'B1', 'x', { ...then, id: 'B2' })).toMatchObject({ ok: false })
    expect(splitStep(doc, 'B1', 'x'.repeat(401), then)).toMatchObject({ ok: false })
    expect(readPlan(doc).evening).toEqual(evening)
  })

  test('L3 several entries are set all or none, in one update', () => {
    const doc = planOf(lamb)
    const updates = countUpdates(doc)
    expect(
      setEach(doc, 'steps', [
        ['B1', { vessel: 'pan' }],
        ['B5', { vessel: 'pan' }],
      ]),
    ).toEqual({ ok: true, value: null })
    expect(updates()).toBe(1)
    expect(stepsOf(doc, 'lamb').filter((step) => step.vessel === 'pan')).toHaveLength(2)
    expect(
      setEach(doc, 'steps', [
        ['B1', { vessel: 'other' }],
        ['nobody', {}],
      ]),
    ).toMatchObject({ ok: false })
    expect(
      setEach(doc, 'steps', [
        ['B1', { vessel: 'other' }],
        ['B5', { vessel: 'not an id!' }],
      ]),
    ).toMatchObject({ ok: false })
    expect(stepsOf(doc, 'lamb').filter((step) => step.vessel === 'other')).toEqual([])
  })
})
