import { describe, expect, test } from 'vitest'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { DEFAULT_BUDGET, ENGINE, planEvening } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { troubles } from '#tests/support/check-order.ts'
import {
  at,
  batch,
  chores,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  HOME_KIT,
  kitchen,
  leave,
  min,
  notBefore,
  oven,
  ovenUse,
  ring,
  role,
  step,
  tool,
  vessel,
  where,
} from '#tests/support/evening-builders.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const quick = (of: Evening, now?: string, previous?: RunningOrder): RunningOrder =>
  planEvening(of, { budget: { steps: 300, seed: 1 }, ...(now === undefined ? {} : { now }), ...(previous ? { previous } : {}) })

const cueOf = (order: RunningOrder, id: string, number = 0): Cue => {
  const found = order.cues.find((cue) => cue.step === id && cue.batch === number)
  if (!found) throw new Error(`no cue for ${id}`)
  return found
}
const clock = (instant: string): string => instant.slice(11, 16)

describe('evening A: the lamb', () => {
  const lamb = loadEvening('a-lamb')
  const order = planEvening(lamb, { budget: DEFAULT_BUDGET })

  test('O9 evening A is planned without a clash and contradicts neither itself nor the evening', () => {
    expect(order.clashes).toEqual([])
    expect(troubles(lamb, order)).toEqual([])
    const [soup, meat, cheese, posset] = order.courses.map(({ toTable }) => clock(toTable))
    expect(soup).toBe('19:45')
    expect(meat && meat >= '20:10' && meat <= '20:15', meat).toBe(true)
    expect(cheese && cheese <= '21:00', cheese).toBe(true)
    expect(posset && posset <= '21:25', posset).toBe(true)
  })

  test('O9 the order says whose it is', () => {
    expect(order.of).toEqual({ hash: problemHash(lamb), engine: ENGINE, seed: DEFAULT_BUDGET.seed, budget: DEFAULT_BUDGET.steps })
    expect(order).toMatchObject({
      evening: 'a',
      zone: 'Europe/London',
      origin: '2026-11-07T00:00:00+00:00',
      proof: { kind: 'none' },
    })
  })

  test('S2 the same seed and steps give the same order', () => {
    const again = planEvening(lamb, { budget: { steps: 500, seed: 9 } })
    expect(planEvening(lamb, { budget: { steps: 500, seed: 9 } })).toEqual(again)
  })
})

describe('evening C: the pork', () => {
  const pork = loadEvening('c-pork')

  test('O10 the clash names steps, dish, course, kit and minutes', () => {
    const order = planEvening(pork, { budget: DEFAULT_BUDGET })
    expect(troubles(pork, order)).toEqual([])
    expect(order.clashes.length).toBeGreaterThan(0)
    const lags = order.clashes.filter(({ kind }) => kind === 'lag')
    for (const clash of lags) {
      expect(clash).toMatchObject({ dish: 'pork', course: 'course-2', ways: [] })
      expect(clash.steps.length).toBeGreaterThanOrEqual(2)
      expect(secondsOf(clash.by)).toBeGreaterThan(0)
    }
    // Fact C2: the least break is 26 min in all.
    expect(lags.reduce((sum, { by }) => sum + secondsOf(by), 0)).toBeGreaterThanOrEqual(26 * 60)
  })
})

describe('the demo evening', () => {
  const demo = demoEvening('2026-12-05')
  const order = planEvening(demo, { budget: DEFAULT_BUDGET })

  test('O9 the demo is planned without a clash, with every wait in its ideal', () => {
    expect(order.clashes).toEqual([])
    expect(troubles(demo, order)).toEqual([])
    expect(
      order.goals.filter(({ goal }) => ['safe', 'on-time', 'waits', 'keeping'].includes(goal)).every(({ cost }) => cost === 0),
    ).toBe(true)
  })

  test('O9 its cooks are up for less than half an hour each', () => {
    for (const { cook: id, missed } of order.cooks) expect(secondsOf(missed), id).toBeLessThan(30 * 60)
  })

  test('O9 it has 35 to 50 steps, a method for every dish, and work on the day before', () => {
    expect(demo.steps.length).toBeGreaterThanOrEqual(35)
    expect(demo.steps.length).toBeLessThanOrEqual(50)
    expect(demo.dishes.filter(({ id }) => !demo.steps.some((each) => each.dish === id))).toEqual([])
    expect(order.cues.filter(({ start }) => start < '2026-12-05').length).toBeGreaterThan(2)
  })
})

describe('cues', () => {
  test('O3 batches are cues of their own, numbered, one pan at a time', () => {
    const of = evening(course('main', dish('fish', step('fry', 6, ring('large'), batch(2)))), { covers: 8 })
    const order = quick(of)
    const frying = order.cues.filter((cue) => cue.step === 'fry')
    expect(frying.map((cue) => cue.batch)).toEqual([0, 1, 2, 3])
    for (const [k, cue] of frying.entries()) expect(cue.start >= (frying[k - 1]?.end ?? '')).toBe(true)
    expect(troubles(of, order)).toEqual([])
  })

  test('O9 each use is listed, a ring with its number', () => {
    const of = evening(
      course(
        'main',
        dish('stew', step('a', 20, eye, ring('medium'), tool('sink')), step('b', 20, eye, ring('medium'), vessel('pot'))),
      ),
    )
    const order = quick(of)
    expect(cueOf(order, 'a').kit.map(({ id }) => id)).toEqual([expect.stringMatching(/^ring-[ml]$/), 'sink'])
    expect(cueOf(order, 'b').kit).toHaveLength(1)
    expect(troubles(of, order)).toEqual([])
  })

  test('O9 a cue says why it is where it is and how long it can wait', () => {
    const of = evening(
      course(
        'main',
        dish(
          'roast',
          dishWith({ toTable: { early: min(0), late: min(0) } }),
          step('salt', 5),
          step('grill', 20, follows('salt', 0, 5)),
        ),
      ),
    )
    const order = quick(of)
    expect(cueOf(order, 'grill').slack).toBe('PT0S')
    expect(cueOf(order, 'grill').because).toContainEqual({ kind: 'course', course: 'main' })
    expect(cueOf(order, 'salt').because).toContainEqual({ kind: 'after', step: 'grill' })
  })

  test('O2 a dish of another kitchen is carried after one stay and before the next', () => {
    const of = evening(
      course(
        'main',
        dish(
          'pie',
          dishWith({ kitchen: 'away', carry: { how: 'hot', most: min(60), kind: 'quality' } }),
          step('bake', 30),
          step('drive', 20, role('carry'), where('outside'), follows('bake')),
          step('warm', 10, role('finish'), follows('drive')),
        ),
      ),
      {
        kitchens: [kitchen('home', HOME_KIT), kitchen('away', [], 20)],
        cooks: [cook('lou', ['away 17:00 18:45', 'home 19:10 23:00'])],
      },
    )
    const order = quick(of)
    expect(troubles(of, order)).toEqual([])
    expect(order.clashes).toEqual([])
    expect(cueOf(order, 'drive')).toMatchObject({ kitchen: 'away', cooks: ['lou'] })
    expect(clock(cueOf(order, 'drive').start) >= '18:45' && clock(cueOf(order, 'drive').end) <= '19:10').toBe(true)
    expect(cueOf(order, 'warm').kitchen).toBe('home')
  })

  test('T1 the night the clocks go back: a roast of three hours takes two by the wall clock', () => {
    const of = evening(course('breakfast', dish('ham', step('bake', 180, oven(120, 130)))), {
      date: '2026-10-25',
      guestsFrom: at('03:30'),
      sitDown: at('03:45'),
      cooks: [cook('kim', ['home 00:00 06:00'])],
    })
    const order = quick(of)
    const { start, end } = cueOf(order, 'bake')
    expect([start, end]).toEqual(['2026-10-25T01:45:00+01:00', '2026-10-25T03:45:00+00:00'])
    expect(troubles(of, order)).toEqual([])
  })

  test('T1 the night the clocks go forward: it takes four', () => {
    const of = evening(course('breakfast', dish('ham', step('bake', 180, oven(120, 130)))), {
      date: '2026-03-29',
      guestsFrom: at('05:30'),
      sitDown: at('05:45'),
      cooks: [cook('kim', ['home 00:00 08:00'])],
    })
    const { start, end } = cueOf(quick(of), 'bake')
    expect([start, end]).toEqual(['2026-03-29T01:45:00+00:00'.replace('01:45:00+00', '02:45:00+01'), '2026-03-29T05:45:00+01:00'])
  })

  test('T3 a dinner past midnight goes on into the next day', () => {
    const of = evening(
      course('first', dish('soup', step('simmer', 30, eye, ring('medium')))),
      course('second', dish('toast', step('grill', 10))),
      { guestsFrom: at('23:30'), sitDown: at('23:45'), cooks: [cook('kim', ['home 20:00 1 03:00'])] },
    )
    const order = quick(of)
    expect(order.courses.map(({ toTable }) => toTable)).toEqual([
      '2026-11-14T23:45:00+00:00',
      expect.stringMatching(/^2026-11-15T00:/),
    ])
    expect(order.clashes).toEqual([])
    expect(troubles(of, order)).toEqual([])
  })
})

describe('ovens', () => {
  test('O11 two roasts and a plate kept hot: the line obeys slopes and windows, and says when to turn it up', () => {
    const of = evening(
      course(
        'main',
        dish(
          'low',
          dishWith({
            toTable: { early: min(0), late: min(0) },
            keeps: { how: 'hot', most: min(60), kind: 'quality', uses: [ovenUse(70, 90)] },
          }),
          step('slow', 90, oven(140, 150)),
        ),
        dish(
          'high',
          dishWith({ keeps: { how: 'warm', most: min(90), kind: 'quality', uses: [] } }),
          step('fast', 30, oven(220, 230)),
        ),
      ),
    )
    const order = quick(of)
    expect(troubles(of, order)).toEqual([])
    const [line] = order.ovens
    expect(line?.line[0]?.c).toBe(20)
    expect(line?.line.at(-1)?.c).toBe(20)
    expect(Math.max(...(line?.line.map(({ c }) => c) ?? []))).toBe(220)
    expect(line?.preheats.length).toBeGreaterThanOrEqual(1)
  })

  test('O11 what need not be preheated warms up with the oven', () => {
    const of = evening(course('main', dish('bread', step('bake', 60, oven(200, 220, { preheated: false })))))
    const order = quick(of)
    expect(order.ovens[0]?.preheats).toEqual([])
    expect(order.ovens[0]?.line[0]).toEqual({ at: cueOf(order, 'bake').start, c: 20 })
    expect(troubles(of, order)).toEqual([])
  })

  test('O11 between two dishes that follow closely the oven is left as it is', () => {
    const of = evening(
      course('main', dish('pie', step('bake', 30, oven(180, 190)), step('brown', 10, oven(180, 190), follows('bake', 15, 25)))),
    )
    const order = quick(of)
    expect(troubles(of, order)).toEqual([])
    const [cold, hot, still] = order.ovens[0]?.line ?? []
    expect([cold?.c, hot?.c, still?.c]).toEqual([20, 180, 180])
    expect(hot?.at).toBe(cueOf(order, 'bake').start)
    expect(still && still.at >= cueOf(order, 'brown').end, still?.at).toBe(true)
    expect(order.ovens[0]?.preheats).toHaveLength(1)
  })

  test('O11 an oven that nobody uses stays cold', () => {
    expect(quick(evening(course('main', dish('salad', step('toss', 5))))).ovens).toEqual([
      { kit: 'oven', line: [], preheats: [] },
    ])
  })
})

describe('clashes', () => {
  const kinds = (order: RunningOrder) => order.clashes.map(({ kind, steps }) => [kind, ...steps])

  test('O10 a step whose kit is not there is left out and named', () => {
    const of = evening(course('main', dish('soup', step('blend', 5, tool('blender')), step('warm', 10, follows('blend')))))
    const order = quick(of)
    expect(kinds(order)).toEqual([['no-kit', 'blend']])
    expect(order.clashes[0]).toMatchObject({ dish: 'soup', course: 'main', kit: null, by: 'PT5M' })
    expect(cueOf(order, 'warm').step).toBe('warm')
    expect(troubles(of, order)).toEqual([])
  })

  test('O10 a step that wants more than the kit holds names the kit', () => {
    const of = evening(course('main', dish('soup', step('stack', 5, oven(100, 120, { shelves: 3 })))))
    expect(quick(of).clashes).toMatchObject([{ kind: 'no-kit', steps: ['stack'], kit: 'oven' }])
  })

  test('O10 a step for two cooks where there is one is left out and named', () => {
    const of = evening(course('main', dish('soup', step('plate', 5, cooks(2)), step('warm', 10))))
    const order = quick(of)
    expect(kinds(order)).toEqual([['no-cook', 'plate']])
    expect(troubles(of, order)).toEqual([])
  })

  test('O10 a first course that cannot be ready in time is late by so much', () => {
    const of = evening(course('main', dish('soup', step('simmer', 40))), { cooks: [cook('kim', ['home 19:00 23:00'])] })
    const order = quick(of)
    expect(order.clashes).toMatchObject([{ kind: 'sit-down', course: 'main', steps: ['simmer'], by: 'PT10M' }])
    expect(order.courses[0]).toMatchObject({ wait: 'PT10M', toTable: '2026-11-14T19:40:00+00:00' })
    expect(troubles(of, order)).toEqual([])
  })

  test('O10 a wait that must be too long is a clash of its course', () => {
    const of = evening(
      course('first', dish('soup', step('ladle', 5))),
      course('second', courseWith({ notBefore: at('21:00') }), dish('pie', step('cut', 5))),
    )
    const order = quick(of)
    expect(order.clashes).toMatchObject([{ kind: 'wait', course: 'second', steps: ['cut'], by: 'PT50M' }])
    expect(troubles(of, order)).toEqual([])
  })

  test('O10 a dish that must wait longer than it keeps is a clash of the dish', () => {
    const of = evening(
      course(
        'main',
        dish('soup', dishWith({ keeps: { how: 'hot', most: min(5), kind: 'quality', uses: [] } }), step('simmer', 30)),
      ),
      {
        cooks: [cook('kim', ['home 17:00 19:00'])],
      },
    )
    const order = quick(of)
    expect(order.clashes).toMatchObject([{ kind: 'keeps', dish: 'soup', course: 'main', steps: ['simmer'], by: 'PT25M' }])
    expect(order.keeping).toMatchObject([{ dish: 'soup', from: '2026-11-14T19:00:00+00:00', to: '2026-11-14T19:30:00+00:00' }])
    expect(troubles(of, order)).toEqual([])
  })

  test('O10 a dish too long on its way is a clash of its carrying', () => {
    const of = evening(
      course(
        'main',
        dish(
          'pie',
          dishWith({
            kitchen: 'away',
            carry: { how: 'hot', most: min(10), kind: 'quality' },
            keeps: { how: 'hot', most: min(60), kind: 'quality', uses: [] },
          }),
          step('bake', 30),
          step('drive', 20, role('carry'), where('outside'), follows('bake')),
          step('warm', 10, role('finish'), follows('drive')),
        ),
      ),
      {
        kitchens: [kitchen('home', HOME_KIT), kitchen('away', [], 20)],
        cooks: [cook('lou', ['away 17:00 18:45', 'home 19:10 23:00'])],
      },
    )
    const order = quick(of)
    expect(order.clashes).toMatchObject([{ kind: 'carry', dish: 'pie', course: 'main', steps: ['drive'] }])
    expect(secondsOf(order.clashes[0]?.by ?? 'PT0S')).toBeGreaterThanOrEqual(600)
    expect(troubles(of, order)).toEqual([])
  })
})

describe('the table', () => {
  test('O12 who does not eat misses nothing and has no seat; laying the table is no absence', () => {
    const of = evening(
      course('first', dish('soup', step('ladle', 5, role('plate')))),
      course('second', dish('pie', step('cut', 5, role('plate')))),
      chores(step('candles', 10, where('table'), notBefore('19:30'))),
      { cooks: [cook('kim'), cook('lou', ['home 12:00 23:30'], { host: false, eats: false })] },
    )
    const order = quick(of)
    expect(troubles(of, order)).toEqual([])
    expect(order.cooks.find(({ cook: id }) => id === 'lou')).toMatchObject({ missed: 'PT0S', sits: [] })
  })

  test('O12 with nobody to plan for there is still an order', () => {
    const of = evening({ cooks: [] })
    const order = quick(of)
    expect(order).toMatchObject({ cues: [], courses: [], cooks: [], clashes: [], allHostsAway: 'PT0S', total: 0 })
    expect(troubles(of, order)).toEqual([])
  })

  test('O12 with dishes and no cooks every attended step is named', () => {
    const of = evening(course('main', dish('soup', step('chop', 5), step('rest', 30, leave, follows('chop')))), { cooks: [] })
    const order = quick(of)
    expect(order.clashes).toMatchObject([{ kind: 'no-cook', steps: ['chop'] }])
    expect(troubles(of, order)).toEqual([])
  })
})

describe('on the night', () => {
  const plain = evening(
    course(
      'main',
      dish(
        'roast',
        step('salt', 10),
        step('grill', 30, eye, ring('large'), follows('salt', 0, 60)),
        step('carve', 8, follows('grill', 5, 15)),
      ),
    ),
  )

  test('O5 what happened keeps its seconds, what is under way its start', () => {
    const of: Evening = {
      ...plain,
      night: [
        { step: 'salt', started: '2026-11-14T18:20:07Z', done: '2026-11-14T18:31:12Z', by: 'kim' },
        { step: 'grill', started: '2026-11-14T18:40:45Z', by: 'kim' },
      ],
    }
    const order = quick(of, '2026-11-14T18:50:00Z')
    expect(cueOf(order, 'salt')).toMatchObject({
      state: 'done',
      start: '2026-11-14T18:20:07+00:00',
      end: '2026-11-14T18:31:12+00:00',
    })
    expect(cueOf(order, 'grill')).toMatchObject({ state: 'running', start: '2026-11-14T18:40:45+00:00', cooks: ['kim'] })
    expect(cueOf(order, 'carve').state).toBe('planned')
    expect(cueOf(order, 'carve').start >= '2026-11-14T19:15').toBe(true)
  })

  test('O5 what needs longer pushes what follows', () => {
    const night: Evening['night'] = [{ step: 'grill', started: '2026-11-14T18:45:00Z', by: 'kim' }]
    const inTime = quick({ ...plain, night }, '2026-11-14T19:00:00Z')
    const late = quick({ ...plain, night: [...night, { step: 'grill', extra: 'PT10M', by: 'kim' }] }, '2026-11-14T19:00:00Z')
    expect(inTime.clashes).toEqual([])
    expect(late.clashes).toMatchObject([{ kind: 'sit-down', by: 'PT8M' }])
    expect(late.courses[0]?.toTable).toBe('2026-11-14T19:38:00+00:00')
  })

  test('O6 guests who sit down later are waited for', () => {
    const order = quick({ ...plain, night: [{ sitDown: '2026-11-14T19:50:00Z', by: 'kim' }] })
    expect(order.courses[0]).toMatchObject({ toTable: '2026-11-14T19:50:00+00:00', wait: 'PT0S' })
    expect(order.clashes).toEqual([])
  })

  test('O6 a served course keeps its seconds', () => {
    const of: Evening = {
      ...plain,
      night: [{ course: 'main', toTable: '2026-11-14T19:31:11Z', platesOff: '2026-11-14T19:55:22Z', by: 'kim' }],
    }
    expect(quick(of, '2026-11-14T20:00:00Z').courses[0]).toMatchObject({
      toTable: '2026-11-14T19:31:11+00:00',
      platesOff: '2026-11-14T19:55:22+00:00',
      wait: 'PT1M11S',
    })
  })

  test('O7 what was told to start within three minutes stays', () => {
    const before = quick(plain)
    const now = cueOf(before, 'salt').start
    const order = quick(plain, now, before)
    expect(cueOf(order, 'salt')).toMatchObject({ state: 'frozen', start: now })
    expect(order.goals.find(({ goal }) => goal === 'unchanged')?.cost).toBe(0)
    expect(
      toProblem(plain, { now, previous: before }).problem.previous?.find(({ activity }) => activity === 'salt')?.frozen,
    ).toBe(true)
  })
})
