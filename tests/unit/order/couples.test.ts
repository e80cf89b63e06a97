import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { hardWork } from '#lib/domain/hard-work.ts'
import type { Step } from '#lib/domain/menu.ts'
import { problemHash } from '#lib/order/hash.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { coupleOf } from '#lib/sharing/couple.ts'
import { cueOf, planned, when } from '#tests/support/checked-plan.ts'
import {
  at,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  follows,
  leave,
  min,
  notBefore,
  role,
  step,
} from '#tests/support/evening-builders.ts'

const keeps = (most: number) => dishWith({ keeps: { how: 'room', most: min(most), kind: 'quality', uses: [] } })
const couple = [cook('kim'), cook('lou')]
/** A step that says what it does. */
const does = (id: string, minutes: number, words: string, ...changes: Parameters<typeof step>[2][]) => ({
  ...step(id, minutes, ...changes),
  does: words,
})

// Without a wish the salad is made just before the last hour, 18:15-18:30; the guests come at 19:00.
test('C21 hosts have nothing to do for so long before the guests come, as far as can be; helpers may', () => {
  const of = (fields: Partial<Evening>, by: Evening['cooks'] = couple) =>
    planned(evening(course('main', dish('salad', keeps(240), does('dress', 15, 'Dress the salad'))), { cooks: by, ...fields }))
  expect(when(of({}), 'dress')).toBe('18:15-18:30')
  expect(when(of({ quietBefore: min(60) }), 'dress')).toBe('17:45-18:00')
  expect(when(of({ quietBefore: min(60) }, [cook('kim', undefined, { host: false })]), 'dress')).toBe('18:15-18:30')
})

// It must begin at 18:30 or later and be over by 18:42: some of the quiet is given up, and no more than must be.
test('C21 what cannot be done at another time is done all the same', () => {
  const late = (one: Step) => ({ ...one, latest: at('18:42') })
  const order = planned(
    evening(course('main', dish('bread', keeps(240), step('bake', 10, notBefore('18:30'), late))), {
      cooks: couple,
      quietBefore: min(25),
    }),
  )
  expect(when(order, 'bake')).toBe('18:30-18:40')
  expect(
    coupleOf(
      evening(course('main', dish('bread', keeps(240), step('bake', 10, notBefore('18:30'), late))), {
        cooks: couple,
        quietBefore: min(25),
      }),
      order,
    ).quiet,
  ).toEqual({
    minutes: 25,
    broken: [{ cook: order.cues[0]?.cooks[0], minutes: 5 }],
  })
})

const roast = (fields: Partial<Evening> = {}, words = 'Carve the lamb') =>
  evening(
    course('soup', dish('broth', keeps(60), step('ladle', 4, role('plate')))),
    course('main', dish('lamb', keeps(0), does('carve', 10, words, role('finish')))),
    { cooks: couple, ...fields },
  )

test('C22 hard work after the guests come goes to who has no glass, even when that is less fair; else it is done all the same', () => {
  for (const [drinks, other] of [
    ['kim', 'lou'],
    ['lou', 'kim'],
  ] as const) {
    const cooks = couple.map((one) => (one.id === drinks ? { ...one, drinks: true as const } : one))
    expect(cueOf(planned(roast({ cooks })), 'carve').cooks).toEqual([other])
  }
  const both = couple.map((one) => ({ ...one, drinks: true as const }))
  expect(cueOf(planned(roast({ cooks: both })), 'carve').cooks).toHaveLength(1)
  const alone = [{ ...cook('kim'), drinks: true as const }]
  expect(cueOf(planned(roast({ cooks: alone })), 'carve').cooks).toEqual(['kim'])
})

test('C22 hard is what is sharp, in hot fat, hot to carry or long, and never what is left alone', () => {
  const why = (words: string, minutes = 5, change: Parameters<typeof step>[2] = (one) => one) => {
    const made = change(does('it', minutes, words))
    return hardWork(made, made.ways, null)
  }
  expect(
    ['Carve the lamb', 'Slice the trout', 'Chop the parsley', 'Deep-fry the sage', 'Brown the butter'].map((words) => why(words)),
  ).toEqual(['sharp', 'sharp', 'sharp', 'hot-fat', 'hot-fat'])
  expect([why('Drain the beans'), why('Whip the cream', 15), why('Whip the cream', 14)]).toEqual(['hot-load', 'long', null])
  expect([why('Warm the bread'), why('Stir in the sliced plums'), why('Carve it at ease', 60, leave)]).toEqual([null, null, null])
})

test('C22 the order hangs on what a step says only when somebody drinks', () => {
  const cooks = [cook('kim', undefined, { drinks: true }), cook('lou')]
  expect(problemHash(roast({}, 'Carve it'))).toBe(problemHash(roast({}, 'Warm it')))
  expect(problemHash(roast({ cooks }, 'Carve it'))).not.toBe(problemHash(roast({ cooks }, 'Warm it')))
  expect(problemHash(roast({ cooks }, 'Carve it'))).toBe(problemHash(roast({ cooks }, 'Carve the lamb')))
  expect('spares' in toProblem(roast()).problem).toBe(false)
})

// Kim hosts the main course and Lou the sweet one: each finishes the other's.
test('C23 who hosts a course is not at its last work, and swapping the two swaps who is', () => {
  const of = (main: string, sweet: string) =>
    planned(
      evening(
        course('soup', dish('broth', keeps(60), step('ladle', 4, role('plate')))),
        course('main', courseWith({ hosts: main }), dish('lamb', keeps(0), step('warm', 6, role('finish')))),
        course('sweet', courseWith({ hosts: sweet }), dish('pudding', keeps(0), step('turn-out', 6, role('plate')))),
        { cooks: couple },
      ),
    )
  const order = of('kim', 'lou')
  expect([cueOf(order, 'warm').cooks, cueOf(order, 'turn-out').cooks]).toEqual([['lou'], ['kim']])
  const swapped = of('lou', 'kim')
  expect([cueOf(swapped, 'warm').cooks, cueOf(swapped, 'turn-out').cooks]).toEqual([['kim'], ['lou']])
})

// Without bedtime the sauce would be at 19:20.
test('C24 a cook who is busy is as one who is not there', () => {
  const busy = [{ name: 'Bedtime', from: at('18:45'), to: at('19:30') }]
  const of = (cooks: Evening['cooks']) => planned(evening(course('main', dish('roast', keeps(45), step('sauce', 10))), { cooks }))
  expect(when(of([cook('kim')]), 'sauce')).toBe('19:20-19:30')
  expect(when(of([cook('kim', undefined, { busy })]), 'sauce')).toBe('18:35-18:45')
  expect(cueOf(of([cook('kim', undefined, { busy }), cook('lou')]), 'sauce').cooks).toEqual(['lou'])
})

// The grown-ups come at 19:00 for the nibbles; the children's pasta is on their plates at 18:00 and holds nothing else up.
test('C25 children eat at a time of their own, so many of them, and no other course waits for theirs', () => {
  const of = evening(
    course('nibbles', courseWith({ welcome: true }), dish('olives', keeps(60), step('put-out', 2))),
    course('main', dish('roast', keeps(10), step('sauce', 10))),
    course(
      'tea',
      courseWith({ welcome: true, children: { at: at('18:50'), covers: 3 } }),
      dish(
        'pasta',
        keeps(5),
        step('boil', 12, (one) => ({ ...one, batch: { portions: 1, together: 1 } })),
        step('plate', 3, role('plate'), follows('boil')),
      ),
    ),
    { cooks: couple },
  )
  const order = planned(of)
  const moments = order.courses.map(({ course: id, toTable, platesOff }) => [id, toTable.slice(11, 16), platesOff.slice(11, 16)])
  expect(moments).toEqual([
    ['tea', '18:50', '19:15'],
    ['nibbles', '19:00', '19:25'],
    ['main', '19:30', '19:55'],
  ])
  expect(order.cues.filter((cue) => cue.step === 'boil')).toHaveLength(3)
  expect(order.cooks.map(({ missed }) => missed)).toEqual(['PT0S', 'PT0S'])
})

test('C27 how long both are up is told apart for a plating burst and beyond, and hard work after a glass is named with when and why', () => {
  const of = (minutes: number, name: 'plate' | 'finish') =>
    evening(
      course('soup', dish('broth', keeps(60), step('ladle', 4, role('plate')))),
      course('main', dish('lamb', keeps(0), does('carve', minutes, 'Carve the lamb', role(name), cooks(2)))),
      { cooks: [cook('kim', undefined, { drinks: true }), cook('lou')] },
    )
  const told = (made: Evening) => {
    const order = planned(made)
    const { away, glasses } = coupleOf(made, order)
    return {
      away,
      glasses: glasses.map((one) => [one.cook, one.step, one.because, one.start === Date.parse(cueOf(order, 'carve').start)]),
    }
  }
  const glasses = [['kim', 'carve', 'sharp', true]]
  expect(told(of(4, 'plate'))).toEqual({ away: { plating: 4, beyond: 0 }, glasses })
  expect(told(of(10, 'plate'))).toEqual({ away: { plating: 0, beyond: 10 }, glasses })
  expect(told(of(4, 'finish'))).toEqual({ away: { plating: 0, beyond: 4 }, glasses })
})
