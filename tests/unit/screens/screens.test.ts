import fc from 'fast-check'
import { expect, test } from 'vitest'
import { nextPage } from '#app/_account/next-page.ts'
import { signInError } from '#app/_account/tries.ts'
import { withCare } from '#app/_dish/way-words.ts'
import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import { blankCourse, blankDish, blankDrink, blankStep, blankWay } from '#app/_menu/blank.ts'
import { lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { placeAfterMove } from '#app/_ui/move-place.ts'
import { seatsAround } from '#app/_ui/seats.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { planned } from './planned.ts'

test('U7 after signing in one goes to a page of this site, never to another one', () => {
  expect(nextPage('/evenings/a/menu?x=1')).toBe('/evenings/a/menu?x=1')
  for (const wanted of [
    '//evil.example',
    '/\\evil.example',
    'https://evil.example',
    'javascript:alert(1)',
    '',
    null,
    undefined,
    '/sign-in',
  ])
    expect(nextPage(wanted)).toBe('/')
  fc.assert(
    fc.property(fc.string(), (wanted) => {
      expect(new URL(nextPage(wanted), 'https://here.example').host).toBe('here.example')
    }),
  )
})

test('U7 a wrong password and too many tries say what to do', () => {
  expect(signInError('wrong')).toMatch(/try again/)
  expect(signInError('too-many-tries:240')).toBe('Too many tries. Wait 4 min, then try again.')
  expect(eveningRefusalText({ kind: 'last-host' })).toMatch(/Make somebody else a host/)
})

test('U8 what is added new is an evening that the schemas take, whatever its care', () => {
  const evening = randomEvening(2)
  const made = {
    ...evening,
    courses: [...evening.courses, { ...blankCourse('new-course'), order: 'z1' }],
    dishes: [...evening.dishes, { ...blankDish('new-dish', 'new-course', evening), order: 'a1' }],
    steps: [
      ...evening.steps,
      ...(['hands-on', 'eye', 'leave'] as const).map((care, index) => ({
        ...blankStep(`new-${care}`, 'new-dish', index > 0 ? evening.steps[0] : undefined),
        ways: [withCare({ ...blankWay, cooks: 2, upTo: 'PT1H', touches: [] }, care)],
        order: `b${index}`,
      })),
    ],
    drinks: [...evening.drinks, { ...blankDrink('new-drink', 'new-course', 'with'), order: 'a1' }],
  }
  expect(parseEvening(made)).toMatchObject({ ok: true })
})

test('U8 a way that is no longer left alone keeps neither touches nor a longest stay', () => {
  const left = withCare({ ...blankWay, upTo: 'PT1H' }, 'leave')
  expect(left.touches.map((touch) => touch.when)).toEqual(['in', 'out'])
  expect(withCare(left, 'hands-on')).toMatchObject({ care: 'hands-on', touches: [] })
  expect(withCare(left, 'eye')).not.toHaveProperty('upTo')
})

test('U8 moving by one finds the place among siblings, and none beyond the ends', () => {
  const siblings = ['a', 'b', 'c'].map((id) => ({ id }))
  expect(placeAfterMove(siblings, 'a', -1)).toBeNull()
  expect(placeAfterMove(siblings, 'a', 1)).toEqual({ kind: 'after', id: 'b' })
  expect(placeAfterMove(siblings, 'b', -1)).toEqual({ kind: 'first' })
  expect(placeAfterMove(siblings, 'c', -1)).toEqual({ kind: 'after', id: 'a' })
  expect(placeAfterMove(siblings, 'c', 1)).toBeNull()
  expect(placeAfterMove(siblings, 'x', 1)).toBeNull()
})

test('U9 last-minute minutes are those of the quarter of an hour before a dish’s course', () => {
  const { evening, order, names } = planned(randomEvening(6))
  const minutes = lastMinuteMinutes(order, names)
  expect([...minutes.values()].some((each) => each > 0)).toBe(true)
  for (const [dish, each] of minutes) {
    expect(evening.dishes.some((candidate) => candidate.id === dish)).toBe(true)
    expect(each).toBeLessThanOrEqual(15 * evening.cooks.length * 3)
  }
})

test('U9 everybody has a seat of their own at the table', () => {
  for (const covers of [1, 2, 3, 5, 6, 8, 13, 22]) {
    const seats = seatsAround(covers, { x: 76, y: 48, width: 408, height: 276 })
    expect(seats).toHaveLength(covers)
    for (const [index, seat] of seats.entries())
      for (const other of seats.slice(index + 1)) {
        const apart = Math.hypot(seat.plate.x - other.plate.x, seat.plate.y - other.plate.y)
        expect(apart).toBeGreaterThan(seat.plate.r + other.plate.r)
      }
  }
})
