import { expect, test } from 'vitest'
import { sceneOf } from '#app/_dish/scene.ts'
import { applyStepEdit } from '#app/_dish/step-edit.ts'
import { aheadParts, presetParts } from '#app/_dish/step-presets.ts'
import { stepSentences } from '#app/_dish/step-sentences.ts'
import { copyStep } from '#lib/plan/commands/copy-step.ts'
import { splitStep } from '#lib/plan/commands/split-step.ts'
import { readPlan } from '#lib/plan/read.ts'
import { fillIn } from '#tests/support/fill-in.ts'
import { HARD, hardEvening } from '#tests/support/hard-step.ts'
import { loopbackRoom } from '#tests/support/loopback-room.ts'

test('R21 whatever is said of a step, one thing after the other, is admitted and is the same for everybody', async () => {
  const evening = hardEvening()
  const opened = await loopbackRoom(evening)
  const [host, cook] = [opened.device('m-host', 'host'), opened.device('m-cook', 'cook')]
  opened.connect(host)
  opened.connect(cook)
  await opened.settle()

  const { doc } = cook.client
  let ids = 0
  const sceneNow = () => {
    const now = readPlan(doc).evening
    const step = now.steps.find((one) => one.id === HARD)
    if (!step) throw new Error('the step is gone')
    return sceneOf(step, { evening: now, kitchens: '/kitchens', newId: () => `made-${++ids}` })
  }
  const partsNow = () => {
    const scene = sceneNow()
    return [...stepSentences(scene).flatMap(({ parts }) => parts), ...presetParts(scene), ...aheadParts(scene)]
  }
  // Each blank in turn, as it is after all that was said before; two words or choices of each.
  const names = partsNow().flatMap((part) => (typeof part === 'string' || part.kind === 'note' ? [] : [part.at]))
  let said = 0
  for (const [turn, at] of names.entries()) {
    const part = partsNow().find((one) => typeof one !== 'string' && one.at === at)
    const understood = part ? fillIn(part).filter((one) => one.said.kind === 'means') : []
    for (const { said: made } of [understood[turn % understood.length], understood.at(-1)].filter((one) => one !== undefined)) {
      if (made.kind === 'wrong') continue
      expect(applyStepEdit(doc, HARD, made.value), at).toMatchObject({ ok: true })
      said += 1
    }
    if (turn % 8 === 0) await opened.settle()
  }
  const { order: _order, after: _after, dish: _dish, ...then } = { ...sceneNow().step, id: 'then', does: 'Then this' }
  expect(splitStep(doc, HARD, 'First this', then)).toMatchObject({ ok: true })
  expect(copyStep(doc, HARD, 'copy')).toMatchObject({ ok: true })
  await opened.settle()

  expect(said).toBeGreaterThan(80)
  expect(cook.closedWith).toBeNull()
  expect(cook.client.acked).toBe(cook.client.sent)
  expect(opened.logged).toEqual([])
  expect(readPlan(host.client.doc)).toEqual(readPlan(doc))
  expect(readPlan(host.client.doc).reports).toEqual([])
  expect(readPlan(host.client.doc).evening.steps.find((step) => step.id === HARD)).not.toEqual(
    evening.steps.find((step) => step.id === HARD),
  )
})
