import { expect, test } from 'vitest'
import { guardWords } from '#app/_words/verdict.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { guardPlate } from '#lib/plan/commands/guard-plate.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { dishVerdict } from '#lib/table/dish-verdict.ts'
import { stepsBehind } from '#lib/table/guards.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { course, dish, evening, follows, HOME_KIT, kitchen, role, step, tool, where } from '#tests/support/evening-builders.ts'
import { planOf } from './open-plan.ts'

const counting = (prefix = 'new') => {
  let count = 0
  return () => {
    count += 1
    return `${prefix}-${count}`
  }
}
const guarded = (whole: Evening, of: string, need: string, newId = counting()) => {
  const doc = planOf(whole)
  const undo = openUndo(doc)
  const before = readPlan(doc).evening
  let updates = 0
  doc.on('update', () => {
    updates += 1
  })
  const name = before.dishes.find(({ id }) => id === of)?.name ?? ''
  const wish = { dish: of, need, words: guardWords(name, need), behind: stepsBehind(before, of, need) }
  const made = undo.edit((one) => guardPlate(one, before, wish, newId))
  return { made, undo, before, doc, updates, wish, after: readPlan(doc).evening }
}

test('Y16 the guards come in one update and go with one undo; what the plan then says is sound, and names no guest', () => {
  const { made, updates, undo, before, doc, after } = guarded(demoEvening('2027-02-20'), 'rice', 'sesame')
  expect(made).toMatchObject({ ok: true })
  expect(updates).toBe(1)
  expect(readPlan(doc).reports).toEqual([])
  expect(checkEvening(after)).toEqual([])
  const guards = after.steps.filter(({ guard }) => guard)
  expect(guards.map(({ guard, dish: of }) => [of, guard?.for, guard?.does])).toEqual(
    (['begin', 'cover', 'plate', 'carry'] as const).map((does) => ['rice', 'sesame', does]),
  )
  expect(made.ok && made.value).toBe(guards.at(-1)?.id)
  const names = demoEvening('2027-02-20').guests.map(({ name }) => name)
  expect(names.length).toBeGreaterThan(3)
  for (const { does } of guards) for (const name of names) expect(does).not.toContain(name)
  const rice = after.dishes.find(({ id }) => id === 'rice')
  if (!rice) throw new Error('no rice')
  expect(dishVerdict(after, rice, [{ need: 'sesame', grade: 'severe' }]).kind).toBe('fits')
  undo.undo()
  expect(readPlan(doc).evening).toEqual(before)
})

test('Y16 guards that are there are not put in again', () => {
  const { doc, after, wish } = guarded(demoEvening('2027-02-20'), 'rice', 'sesame')
  expect(guardPlate(doc, after, wish, counting())).toMatchObject({ ok: true })
  expect(readPlan(doc).evening.steps.map(({ id }) => id)).toEqual(after.steps.map(({ id }) => id))
  // A guard that somebody took away comes back, and the others stay.
  const without = { ...after, steps: after.steps.filter(({ guard }) => guard?.does !== 'cover') }
  expect(guarded(without, 'rice', 'sesame', counting('more')).after.steps.filter(({ guard }) => guard)).toHaveLength(4)
})

test('Y16 in the running order it is made first, with tools of its own, and plated before what has the allergen', () => {
  const whole = evening(
    { kitchens: [kitchen('home', [...HOME_KIT, { id: 'boards', kind: 'tool', tool: 'Board', count: 2 }])] },
    course(
      'main',
      dish('plain', step('p1', 10), step('p2', 2, role('plate'), follows('p1'))),
      dish(
        'nutty',
        step('n1', 10, tool('board')),
        step('n2', 3, role('finish'), follows('n1')),
        step('n3', 2, role('plate'), follows('n2')),
      ),
    ),
  )
  const nuts = {
    id: 'nuts',
    dish: 'nutty',
    step: 'n2',
    order: 'a0',
    food: 'walnuts',
    amount: null,
    scales: 'yes',
    allergens: ['nuts'],
    checked: 'known',
    contains: [],
  } as const
  const greens = { ...nuts, id: 'greens', dish: 'plain', step: 'p1', food: 'spinach', allergens: [] }
  const { after } = guarded(
    {
      ...whole,
      ingredients: [
        { ...nuts, allergens: ['nuts'], contains: [] },
        { ...greens, allergens: [], contains: [] },
      ],
    },
    'plain',
    'nuts',
  )
  const id = (does: string) => after.steps.find(({ guard }) => guard?.does === does)?.id ?? ''
  expect(after.steps.find((each) => each.id === id('begin'))?.ways[0]?.uses).toContainEqual({
    kind: 'tool',
    tool: 'Board',
    count: 1,
  })
  const order = planEvening(after, { budget: { steps: 1500, seed: 1 } })
  const [from, to] = (['start', 'end'] as const).map((edge) => (of: string) => {
    const cue = order.cues.find((each) => each.step === of)
    if (!cue) throw new Error(`no cue of ${of}`)
    return msOfInstant(cue[edge])
  })
  if (!from || !to) throw new Error('no edges')
  const chain = [id('begin'), 'p1', id('cover'), id('plate'), id('carry')]
  for (const [at, of] of chain.slice(1).entries()) expect(from(of), of).toBeGreaterThanOrEqual(to(chain[at] ?? ''))
  expect(from('p2')).toBeGreaterThanOrEqual(to(id('plate')))
  expect(from('n2')).toBeGreaterThanOrEqual(to(id('cover')))
  expect(from('n3')).toBeGreaterThanOrEqual(to(id('plate')))
})

test('Y16 of a dish that is carried the cover comes before the way, and the plate after it', () => {
  const whole = evening(
    { kitchens: [kitchen('home', HOME_KIT), kitchen('next', [])] },
    course(
      'main',
      dish(
        'stew',
        (each) => ({ ...each, kitchen: 'next' }),
        step('s1', 10),
        step('s2', 20, role('carry'), where('outside'), follows('s1')),
        step('s3', 2, role('plate'), follows('s2')),
      ),
    ),
  )
  const { after } = guarded(whole, 'stew', 'nuts')
  const found = (does: string) => after.steps.find(({ guard }) => guard?.does === does)
  const waits = (of: string) => after.steps.find((each) => each.id === of)?.after.map((lag) => lag.step)
  expect(waits('s2')).toEqual(['s1', found('cover')?.id])
  expect(found('plate')?.after.map((lag) => lag.step)).toEqual([found('cover')?.id, 's2'])
  expect(waits('s3')).toEqual(['s2', found('plate')?.id])
  expect(checkEvening(after)).toEqual([])
})

test('Y16 what this dish waits for is never made to wait for it, and a wish for a dish that is gone changes nothing', () => {
  const whole = evening(
    course(
      'main',
      dish('plain', step('p1', 10, follows('n1'))),
      dish('nutty', step('n1', 10, role('finish')), step('n2', 3, role('plate'), follows('n1'))),
    ),
  )
  const doc = planOf(whole)
  const wish = { dish: 'plain', need: 'nuts', words: guardWords('Plain', 'nuts'), behind: ['n1', 'n2'] }
  expect(guardPlate(doc, whole, { ...wish, dish: 'gone' }, counting())).toMatchObject({ ok: false })
  expect(guardPlate(doc, whole, { ...wish, words: { ...wish.words, carry: 'x'.repeat(401) } }, counting())).toMatchObject({
    ok: false,
  })
  expect(readPlan(doc).evening.steps).toEqual(readPlan(planOf(whole)).evening.steps)
  expect(guardPlate(doc, whole, wish, counting())).toMatchObject({ ok: true })
  const { evening: after, reports } = readPlan(doc)
  expect(reports).toEqual([])
  expect(after.steps.find(({ id }) => id === 'n1')?.after).toEqual([])
  expect(after.steps.find(({ id }) => id === 'n2')?.after).toHaveLength(2)
})
