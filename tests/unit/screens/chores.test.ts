import { expect, test } from 'vitest'
import { minutesBefore, usualChores } from '#app/_chores/usual-chores.ts'
import { blankStep } from '#app/_menu/blank.ts'
import { templateKit } from '#lib/domain/kitchen-templates.ts'
import { Step } from '#lib/domain/menu.ts'
import { usualPresence } from '#lib/domain/presence.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { addStep } from '#lib/plan/commands/add.ts'
import { moveStep } from '#lib/plan/commands/move.ts'
import { readPlan } from '#lib/plan/read.ts'
import * as make from '#tests/support/evening-builders.ts'
import { planOf } from '../plan/open-plan.ts'

const dinner = make.evening(
  make.course('first', make.dish('soup', make.step('stir', 10, make.ring('medium'), make.eye))),
  make.course('second', make.dish('roast', make.step('carve', 10, make.worktop(2)))),
  {
    covers: 6,
    kitchens: [
      make.kitchen(
        'home',
        templateKit('one-oven', (key) => key),
      ),
    ],
    cooks: ['kim', 'lou'].map((id) => ({ ...make.cook(id), presence: usualPresence('home') })),
  },
)

test('G9 times are counted back over midnight, and never before the first day of the plan', () => {
  expect(minutesBefore(make.at('19:00'), 90)).toEqual(make.at('17:30'))
  expect(minutesBefore(make.at('0 00:10'), 15)).toEqual({ day: -1, time: '23:55' })
  expect(minutesBefore(make.at('0 12:00'), 1440 * 9)).toEqual({ day: -7, time: '00:00' })
})

test('G9 the usual chores are steps that the schema takes, with times in order, whatever the hour and the number of covers', () => {
  for (const [guestsFrom, sitDown] of [
    ['19:00', '19:30'],
    ['12:00', '12:00'],
    ['00:00', '00:30'],
    ['23:30', '1 00:30'],
    ['-7 00:10', '-7 00:30'],
  ] as const)
    for (const covers of [1, 8, 60]) {
      const evening = { ...dinner, guestsFrom: make.at(guestsFrom), sitDown: make.at(sitDown), covers }
      const chores = usualChores(evening)
      expect(chores.length).toBeGreaterThan(8)
      expect(new Set(chores.map((chore) => chore.does)).size).toBe(chores.length)
      for (const chore of chores) {
        const step = { ...blankStep('chore', null, undefined), ...chore, order: 'a0' }
        expect(Step.safeParse(step).error, chore.does).toBeUndefined()
        expect(step).toMatchObject({ dish: null, role: 'chore', after: [] })
        const { earliest, latest } = chore
        if (!earliest || !latest) throw new Error(`${chore.does} has no times`)
        if (guestsFrom !== '-7 00:10')
          expect(epochMsOf(evening, earliest), `${chore.does} at ${guestsFrom}`).toBeLessThan(epochMsOf(evening, latest))
      }
    }
})

test('G9 a small dinner with all the usual chores and one added by name is planned, each chore within its times', () => {
  const doc = planOf(dinner)
  const chores = [...usualChores(dinner), { does: 'Bring the chairs up' }]
  for (const [index, chore] of chores.entries())
    expect(addStep(doc, { ...blankStep(`chore-${index}`, null, undefined), ...chore })).toMatchObject({ ok: true })
  expect(moveStep(doc, 'chore-3', null, { kind: 'first' })).toMatchObject({ ok: true })
  const { evening, reports } = readPlan(doc)
  expect(reports).toEqual([])
  const house = evening.steps.filter((step) => step.dish === null)
  expect(house.map((step) => step.id)).toEqual([
    'chore-3',
    'chore-0',
    'chore-1',
    'chore-2',
    ...chores.slice(4).map((_, at) => `chore-${at + 4}`),
  ])
  const order = planEvening(evening, { budget: { steps: 400, seed: 1 } })
  expect(order.clashes).toEqual([])
  for (const step of house) {
    const cue = order.cues.find((each) => each.step === step.id)
    if (!cue) throw new Error(`${step.does} is not planned`)
    if (step.earliest) expect(Date.parse(cue.start), step.does).toBeGreaterThanOrEqual(epochMsOf(evening, step.earliest))
    if (step.latest) expect(Date.parse(cue.end), step.does).toBeLessThanOrEqual(epochMsOf(evening, step.latest))
  }
})
