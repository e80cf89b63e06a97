import { describe, expect, test } from 'vitest'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type Remedy, RunningOrder } from '#lib/domain/running-order.ts'
import { applyRemedy } from '#lib/order/apply-remedy.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { WAYS_STEPS, withWaysOut } from '#lib/order/ways-out.ts'
import { troubles } from '#tests/support/check-order.ts'
import {
  claim,
  cook,
  course,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  min,
  notBefore,
  oven,
  role,
  step,
  tool,
} from '#tests/support/evening-builders.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const BUDGET = { steps: WAYS_STEPS, seed: 1 }
/** Small evenings need little. */
const SMALL = { steps: WAYS_STEPS / 2, seed: 1 }

const planned = (of: Evening, steps = 2_000): RunningOrder => planEvening(of, { budget: { steps, seed: 1 }, quick: true })
const waysOf = (of: Evening): RunningOrder => withWaysOut(of, planned(of), { budget: SMALL })

/** What a way out says, without its price. */
const brief = ({ missed: _, said: __, ...change }: Remedy) => change
const clock = (instant: string | undefined): string => (instant ?? '').slice(11, 16)

describe('evening C: the pork', () => {
  const pork = loadEvening('c-pork')
  const order = planEvening(pork, { budget: DEFAULT_BUDGET })
  const answered = withWaysOut(pork, order, { budget: BUDGET })

  test('O18 fact C2: the least break is 26 min in all, on the rest or on the carved meat', () => {
    expect(order.clashes.reduce((sum, { by }) => sum + secondsOf(by), 0)).toBe(26 * 60)
    for (const { kind, steps } of order.clashes) expect([kind, steps[0], steps[1]].join(' ')).toMatch(/^lag (P3 P4|P4 Z)$/)
  })

  test('O19 fact C1: each clash names the crackle, the potatoes, the carving, the plates and the oven they want', () => {
    for (const clash of answered.clashes) {
      expect([...clash.steps].sort()).toEqual(['P3', 'P4', 'R3', 'Z'])
      expect(clash.kit).toBe('oven')
    }
  })

  test('O18 fact C3: potatoes up to 230 °C are the best way out; serving later does not help and is not offered', () => {
    for (const { ways } of answered.clashes) {
      expect(ways[0] && brief(ways[0])).toEqual({ kind: 'widen-temperature', step: 'R3', way: 0, lowC: 200, highC: 230 })
      expect(ways[0]?.missed).toBe('PT0S')
      expect(ways.map(({ kind }) => kind)).not.toContain('course-later')
      expect(ways.map(({ kind }) => kind)).not.toContain('drop')
      expect(ways.length).toBeLessThanOrEqual(4)
      expect(new Set(ways.map(({ kind }) => kind)).size).toBe(ways.length)
    }
  })

  test('O18 fact C2: waiting longer is offered for 26 min, no less', () => {
    for (const { ways } of answered.clashes)
      for (const way of ways) if (way.kind === 'wait-longer') expect(way.by, `${way.after} ${way.step}`).toBe('PT26M')
    expect(answered.clashes.flatMap(({ ways }) => ways.map(({ kind }) => kind))).toContain('wait-longer')
  })

  const best = planEvening(applyRemedy(pork, { kind: 'widen-temperature', step: 'R3', way: 0, lowC: 200, highC: 230 }), {
    budget: DEFAULT_BUDGET,
  })
  const cue = (id: string) => best.cues.find((one) => one.step === id)

  test('O18 fact C3: with it every wish is kept; with 220 and 225 °C the clash stays', () => {
    expect(best.clashes).toEqual([])
    for (const highC of [220, 225]) {
      const not = applyRemedy(pork, { kind: 'widen-temperature', step: 'R3', way: 0, lowC: 200, highC })
      expect(planned(not, 5_000).clashes.map(({ dish: id }) => id)).toContain('pork')
    }
  })

  test('O18 fact C4: with it the slow roast is in by 16:41, potatoes 18:57-19:05, crackle 18:54-19:05, carving 19:34-19:40', () => {
    expect(clock(cue('P2')?.start) <= '16:41', clock(cue('P2')?.start)).toBe(true)
    const within = (id: string, from: string, to: string) => {
      const start = clock(cue(id)?.start)
      expect(start >= from && start <= to, `${id} ${start}`).toBe(true)
    }
    within('R3', '18:57', '19:05')
    within('P3', '18:54', '19:05')
    within('P4', '19:34', '19:40')
  })

  test('O18 fact C5: the steamer starts 18:00-18:44 and holds one medium ring until shortly before the pudding', () => {
    const steam = cue('D2')
    expect(clock(steam?.start) >= '18:00' && clock(steam?.start) <= '18:44', clock(steam?.start)).toBe(true)
    expect(steam?.kit).toEqual([{ id: 'ring-m', unit: expect.any(Number) }])
    const toTable = best.courses.find((one) => one.course === 'course-3')?.toTable ?? ''
    const before = (Date.parse(toTable) - Date.parse(steam?.end ?? '')) / 60_000
    expect(before >= 6 && before <= 40, `${before} min`).toBe(true)
  })

  test('O18 fact C6: coffee starts while the pudding is eaten', () => {
    const brewed = best.cues.filter((one) => one.step === 'E1')
    expect(brewed).toHaveLength(4)
    const pudding = best.courses.find((one) => one.course === 'course-3')
    const start = brewed[0]?.start ?? ''
    expect(start > (pudding?.toTable ?? '') && start < (pudding?.platesOff ?? ''), start).toBe(true)
  })

  test('O18 the answer parses, contradicts neither itself nor the evening, and is the same again', () => {
    expect(RunningOrder.safeParse(answered).success).toBe(true)
    expect(troubles(pork, answered)).toEqual([])
    const small = { steps: 6_000, seed: 3 }
    expect(withWaysOut(pork, order, { budget: small })).toEqual(withWaysOut(pork, order, { budget: small }))
  })

  test('O18 an order without a clash is given back as it is, and one that is stopped says only what was tried', () => {
    expect(withWaysOut(pork, best, { budget: BUDGET })).toBe(best)
    const stopped = withWaysOut(pork, order, { budget: { ...BUDGET, stop: () => true } })
    expect(stopped.clashes.flatMap(({ ways }) => ways)).toEqual([])
    expect(stopped).toEqual(order)
  })
})

describe('ways out of a broken wish', () => {
  test('O18 an oven that a recipe names need not be the one, and the guests notice nothing', () => {
    const upper = { id: 'oven-2', kind: 'oven' as const, name: 'Upper oven', shelves: 1, maxC: 250, upPerMin: 8, downPerMin: 3 }
    const of = evening(
      { kitchens: [kitchen('home', [...HOME_KIT, upper])] },
      course(
        'main',
        dish(
          'roasts',
          step('lamb', 60, oven(140, 150, { oven: 'oven' })),
          step('pie', 40, oven(210, 220, { oven: 'oven' })),
          step('plate', 4, role('plate'), follows('lamb', 0, 10), follows('pie', 0, 10)),
        ),
      ),
    )
    const { clashes } = waysOf(of)
    expect(clashes.length).toBeGreaterThan(0)
    const [way] = clashes[0]?.ways ?? []
    expect(way && brief(way)).toMatchObject({ kind: 'other-oven', kit: 'oven-2' })
    expect(way?.said).toBe('Nobody notices.')
  })

  test('O18 a first course that cannot be ready by sit-down may be begun sooner, or all sit down later', () => {
    const of = evening(
      course('main', dish('soup', step('simmer', 40, notBefore('19:00')))),
      course('second', dish('pie', step('cut', 5))),
    )
    const { clashes } = waysOf(of)
    expect(clashes.map(({ kind, by }) => [kind, by])).toEqual([['sit-down', 'PT10M']])
    expect(clashes[0]?.ways.map(brief)).toEqual([
      { kind: 'do-ahead', step: 'simmer', earliest: { day: 0, time: '18:00' } },
      { kind: 'course-later', course: 'main', by: 'PT10M' },
    ])
  })

  test('O18 a dish that must wait too long may keep longer, not where that is a matter of safety', () => {
    const of = (kind: 'quality' | 'safety') =>
      evening(
        course('main', dish('soup', dishWith({ keeps: { how: 'hot', most: min(5), kind, uses: [] } }), step('simmer', 30))),
        { cooks: [cook('kim', ['home 17:00 19:00'])] },
      )
    const [clash] = waysOf(of('quality')).clashes
    expect(clash?.kind).toBe('keeps')
    expect(clash?.ways.map(brief)).toContainEqual({ kind: 'keep-longer', dish: 'soup', by: 'PT25M' })
    const safe = waysOf(of('safety')).clashes
    expect(safe.length).toBeGreaterThan(0)
    expect(safe.flatMap(({ ways }) => ways.map(({ kind }) => kind))).not.toContain('keep-longer')
  })

  test('O18 what is claimed by somebody who comes late goes to one who is there', () => {
    const of = evening(
      { cooks: [cook('kim'), cook('lou', ['home 19:15 23:00'])], claims: [claim('chop', 'lou')] },
      course('main', dish('stew', step('chop', 20), step('warm', 10, follows('chop')))),
    )
    const [clash] = waysOf(of).clashes
    expect(clash).toMatchObject({ kind: 'sit-down', by: 'PT15M' })
    expect(clash?.ways.map(brief)).toEqual([
      { kind: 'give-to', step: 'chop', cook: 'kim' },
      { kind: 'course-later', course: 'main', by: 'PT15M' },
    ])
  })

  test('O18 a cook who is wanted twice may give one step to another', () => {
    const of = evening(
      { cooks: [cook('kim'), cook('lou')], claims: [claim('stew', 'kim')] },
      course(
        'main',
        dish(
          'stew',
          step('chop', 20),
          step('stir', 20),
          step('plate', 4, role('plate'), follows('chop', 0, 5), follows('stir', 0, 5)),
        ),
      ),
    )
    const { clashes } = waysOf(of)
    expect(clashes.map(({ kind }) => kind)).toEqual(['lag'])
    const [way] = clashes[0]?.ways ?? []
    expect(way && brief(way)).toMatchObject({ kind: 'give-to', cook: 'lou' })
  })
})

describe('ways out for what is left out', () => {
  test('O18 a step whose cook cannot be there goes to another', () => {
    const of = evening(
      { cooks: [cook('kim'), cook('lou', ['home 12:00 12:10'])], claims: [claim('chop', 'lou')] },
      course('main', dish('stew', step('chop', 20), step('warm', 10, follows('chop')))),
    )
    const [clash] = waysOf(of).clashes
    expect(clash).toMatchObject({ kind: 'no-cook', steps: ['chop'] })
    expect(clash?.ways[0] && brief(clash.ways[0])).toEqual({ kind: 'give-to', step: 'chop', cook: 'kim' })
  })

  test('O18 a heat that no oven reaches comes down to what it has', () => {
    const of = evening(course('main', dish('pizza', step('bake', 10, oven(280, 300))), dish('salad', step('toss', 5))))
    const [clash] = waysOf(of).clashes
    expect(clash).toMatchObject({ kind: 'no-kit', steps: ['bake'] })
    expect(clash?.ways.map(brief)).toEqual([
      { kind: 'widen-temperature', step: 'bake', way: 0, lowC: 250, highC: 300 },
      { kind: 'drop', dish: 'pizza' },
    ])
    expect(clash?.ways.map(({ said }) => said)).toEqual([
      'It may come out a little paler.',
      'It would be missing from the table.',
    ])
  })

  test('O18 what nothing can be done about may be dropped, even when its course then has nothing', () => {
    const of = evening(
      course('first', dish('salad', step('toss', 5))),
      course('main', dish('soup', step('blend', 5, tool('blender')))),
    )
    const [clash] = waysOf(of).clashes
    expect(clash).toMatchObject({ kind: 'no-kit', steps: ['blend'] })
    expect(clash?.ways.map(brief)).toEqual([{ kind: 'drop', dish: 'soup' }])
  })
})
