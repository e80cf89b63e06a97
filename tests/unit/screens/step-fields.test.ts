import { beforeAll, describe, expect, test } from 'vitest'
import * as z from 'zod/mini'
import { type Scene, sceneOf } from '#app/_dish/scene.ts'
import { applyStepEdit, type StepEdit } from '#app/_dish/step-edit.ts'
import { aheadParts, presetParts } from '#app/_dish/step-presets.ts'
import { stepSentences } from '#app/_dish/step-sentences.ts'
import { checkEvening } from '#lib/domain/check.ts'
import { Step } from '#lib/domain/menu.ts'
import { typeText } from '#lib/plan/commands/type-text.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { fillIn } from '#tests/support/fill-in.ts'
import { HARD, hardEvening } from '#tests/support/hard-step.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { changedLeaves, schemaLeaves } from '#tests/support/schema-leaves.ts'
import { copyOf, planOf } from '../plan/open-plan.ts'

const evening = hardEvening()
const hard = evening.steps.find((step) => step.id === HARD)
if (!hard) throw new Error('the step is missing')
const sceneOfStep = (step: Step): Scene => sceneOf(step, { evening, kitchens: '/kitchens', newId: () => 'new-id' })
const scene = sceneOfStep(hard)
const plan = planOf(evening)
const undo = openUndo(plan)

const everyPart = (of: Scene) => [...stepSentences(of).flatMap(({ parts }) => parts), ...presetParts(of), ...aheadParts(of)]

/** The step in the plan after an edit, and what could not be read of it then. */
const after = (edit: StepEdit) => {
  expect(undo.edit((doc) => applyStepEdit(doc, HARD, edit))).toMatchObject({ ok: true })
  const { evening: read, reports } = readPlan(plan)
  undo.undo()
  return { read, reports, step: read.steps.find((step) => step.id === HARD) }
}

/** Written as it is typed, letter by letter, and not in a sentence. */
const typed = () => {
  const doc = copyOf(plan)
  expect(typeText(doc, 'steps', HARD, 'does', { at: 0, cut: 0, put: 'Now ' })).toMatchObject({ ok: true })
  return readPlan(doc).evening.steps.find((step) => step.id === HARD)
}

/** Fields that no cook changes: an id is what everything else refers to. */
const FIXED = ['id']

const unclaimed = (schema: z.ZodMiniType, claimed: ReadonlySet<string>): string[] =>
  schemaLeaves(schema).filter((leaf) => !FIXED.includes(leaf) && !claimed.has(leaf))

describe('every field of a step', () => {
  const claimed = new Set<string>()
  const asked = new Set<string>()

  beforeAll(() => {
    for (const leaf of changedLeaves(hard, typed())) claimed.add(leaf)
    for (const { at, said } of everyPart(scene).flatMap((part) => fillIn(part))) {
      if (said.kind === 'wrong') {
        expect(said.why, at).toMatch(/[.]$/)
        continue
      }
      const { read, reports, step } = after(said.value)
      expect(reports, at).toEqual([])
      expect(checkEvening(read), at).toEqual([])
      asked.add(at)
      for (const leaf of changedLeaves(hard, step)) claimed.add(leaf)
    }
  })

  test('U11 can be said: some blank changes it, and what it makes is a sound evening', () => {
    expect(asked.size).toBeGreaterThan(60)
    expect(schemaLeaves(Step).length).toBeGreaterThan(35)
    expect(unclaimed(Step, claimed)).toEqual([])
    expect(readPlan(plan).evening).toEqual(evening)
  })

  test('U11 a field that no blank changes is found', () => {
    const Grown = z.extend(Step, { mood: z.optional(z.string()), until: z.optional(z.strictObject({ smell: z.string() })) })
    expect(unclaimed(Grown, claimed)).toEqual(['until.smell', 'mood'])
  })

  test('U11 each blank has a name of its own, and words for who does not see the sentence', () => {
    const blanks = everyPart(scene).filter((part) => typeof part !== 'string')
    expect(new Set(blanks.map((part) => part.at)).size).toBe(blanks.length)
    for (const part of blanks) if (part.kind !== 'note') expect(part.label.length, part.at).toBeGreaterThan(3)
    const labels = blanks.flatMap((part) => (part.kind === 'note' ? [] : [part.label]))
    expect(labels.filter((label, index) => labels.indexOf(label) !== index)).toEqual([])
  })
})

const patched = (step: Step, edit: StepEdit): unknown => {
  if (edit.kind === 'fields') return { ...step, ...edit.patch }
  return edit.kind === 'move' ? { ...step, dish: edit.dish } : { ...step, ...Object.fromEntries(edit.edits)[step.id] }
}

test('U12 what a sentence says is what it means: written back or chosen again, nothing changes', () => {
  let asked = 0
  for (const whole of [hardEvening(), readEvening('a-lamb'), readEvening('c-pork'), demoEvening('2027-02-20'), randomEvening(3)])
    for (const step of whole.steps) {
      const of = sceneOf(step, { evening: whole, kitchens: '/kitchens', newId: () => 'new-id' })
      for (const part of stepSentences(of).flatMap(({ parts }) => parts)) {
        if (typeof part === 'string' || part.kind === 'note' || part.kind === 'press') continue
        const said = part.kind === 'text' ? part.write(part.text) : part.choose(part.value)
        const where = `${step.id} ${part.at} “${part.kind === 'text' ? part.text : part.value}”`
        expect(said.kind, where).toBe('means')
        if (said.kind === 'means') expect(changedLeaves(step, patched(step, said.value)), where).toEqual([])
        asked += 1
      }
    }
  expect(asked).toBeGreaterThan(2000)
})
