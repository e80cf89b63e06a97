import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Drink, Guest } from '#lib/domain/people.ts'
import { hadBy } from '#lib/drinks/had.ts'
import { moderation } from '#lib/drinks/moderation.ts'
import { drinkers, dryGaps, mayPour, pourFor } from '#lib/drinks/pour.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'

const evening = demoEvening('2026-12-05')
const guest = (fields: Partial<Guest>): Guest =>
  Guest.parse({
    id: 'g',
    name: 'A guest',
    reply: 'yes',
    child: false,
    portion: 1,
    needs: [],
    drinks: 'alcohol',
    drives: false,
    words: '',
    ...fields,
  })

test.each([
  ['a driver', { drives: true }, 'drives'],
  ['a child', { child: true }, 'child'],
  ['who drinks none', { drinks: 'none' as const }, 'abstains'],
  ['who keeps from alcohol', { needs: [{ need: 'alcohol', grade: 'avoids' as const }] }, 'abstains'],
  ['who keeps from it a little', { needs: [{ need: 'no-alcohol', grade: 'dislikes' as const }] }, 'abstains'],
  ['who keeps halal', { needs: [{ need: 'halal', grade: 'avoids' as const }] }, 'abstains'],
  ['who is pregnant', { needs: [{ need: 'pregnancy', grade: 'avoids' as const }] }, 'pregnant'],
  ['who is breastfeeding', { needs: [{ need: 'breastfeeding', grade: 'avoids' as const }] }, 'pregnant'],
  ['who did not say whether they drink', { drinks: 'unknown' as const }, 'not-known'],
  ['who said nothing of their needs', { needs: null }, 'not-known'],
  ['who has not answered', { reply: 'waiting' as const }, 'not-known'],
])('DR2 no alcohol is suggested to %s', (_, fields, because) => {
  const may = mayPour(guest(fields))
  expect(may.kind === 'none' && may.because).toContain(because)
})

test('DR2 a grown-up who said so, has no need against it and does not drive is poured what was planned', () => {
  expect(mayPour(guest({ needs: [{ need: 'sesame', grade: 'severe' }] }))).toEqual({ kind: 'may' })
  expect(
    evening.courses.map(
      ({ id }) =>
        pourFor(
          evening.drinks.filter(({ course }) => course === id),
          guest({}),
        )?.id,
    ),
  ).toEqual(['perry', 'white', 'red', 'sweet-cider'])
})

test('DR2 who is to have none has a drink of no strength at all, not one that is called without', () => {
  const kombucha = Drink.parse({ id: 'k', course: 'main', order: 'a0', name: 'Kombucha', role: 'without', mlEach: 150, abv: 0.5 })
  const water = Drink.parse({ ...kombucha, id: 'w', name: 'Water', abv: 0 })
  expect(pourFor([kombucha], guest({ drives: true }))).toBeNull()
  expect(pourFor([kombucha, water], guest({ drives: true }))?.id).toBe('w')
})

test('DR2 a course with alcohol and nothing without is named', () => {
  expect(dryGaps(evening)).toEqual([])
  const bare = { ...evening, drinks: evening.drinks.filter(({ id }) => id !== 'cherry') }
  expect(dryGaps(bare)).toEqual(['main'])
  const kombucha = bare.drinks.map((drink) => (drink.id === 'jasmine' ? { ...drink, abv: 0.5 } : drink))
  expect(dryGaps({ ...bare, drinks: kombucha })).toEqual(['starter', 'main'])
})

const someNeed = fc.constantFrom('alcohol', 'no-alcohol', 'pregnancy', 'halal', 'sesame', 'vegan')
const someGuest = fc
  .record({
    reply: fc.constantFrom('waiting', 'yes', 'maybe', 'no'),
    child: fc.boolean(),
    drives: fc.boolean(),
    drinks: fc.constantFrom('alcohol', 'none', 'unknown'),
    needs: fc.option(
      fc.array(fc.record({ need: someNeed, grade: fc.constantFrom('dislikes', 'avoids', 'allergy', 'severe') }), {
        maxLength: 3,
      }),
    ),
  })
  .map((fields) => Guest.parse({ ...guest({}), ...fields }))
const someDrinks = fc.array(
  fc
    .record({
      abv: fc.constantFrom(0, 0.5, 5, 12.5, 40),
      mlEach: fc.integer({ min: 0, max: 300 }),
      role: fc.constantFrom('with', 'without'),
    })
    .map((fields) => Drink.parse({ id: 'd', course: 'main', order: 'a0', name: 'A drink', ...fields })),
  { maxLength: 4 },
)

test('DR2 of any guests and any drinks: who drives, is a child, is pregnant, abstains or is not known never has a drop', () => {
  fc.assert(
    fc.property(someGuest, someDrinks, (who, drinks) => {
      const isBarred =
        who.child ||
        who.drives ||
        who.drinks !== 'alcohol' ||
        who.needs === null ||
        who.reply === 'waiting' ||
        who.needs.some(({ need }) => ['alcohol', 'no-alcohol', 'pregnancy', 'halal'].includes(need))
      const [had] = hadBy({ ...evening, drinks }, [who], null)
      if (isBarred) {
        expect(pourFor(drinks, who)?.abv ?? 0).toBe(0)
        expect(had?.ethanolMl ?? 0).toBe(0)
        expect(drinkers([who])).toEqual([])
      }
      // And it can fail: somebody who may have it has it.
      else if (drinks.some(({ abv }) => abv > 0)) expect(pourFor(drinks, who)?.abv).toBeGreaterThan(0)
    }),
    { numRuns: 400 },
  )
})

test('DR3 what a guest has had grows course by course, by the times of the order, with its pace', () => {
  const order = {
    courses: [
      { course: 'welcome', toTable: '2026-12-05T19:00:00Z', platesOff: '2026-12-05T19:25:00Z' },
      { course: 'starter', toTable: '2026-12-05T19:30:00Z', platesOff: '2026-12-05T19:55:00Z' },
      { course: 'main', toTable: '2026-12-05T20:05:00Z', platesOff: '2026-12-05T20:40:00Z' },
      { course: 'pudding', toTable: '2026-12-05T20:50:00Z', platesOff: '2026-12-05T21:00:00Z' },
    ],
  } as unknown as Parameters<typeof hadBy>[2]
  const guests = [
    guest({ id: 'greta' }),
    guest({ id: 'yusuf', drives: true }),
    guest({ id: 'hanne', reply: 'waiting', needs: null }),
  ]
  const had = hadBy(evening, guests, order)
  const greta = had.find((each) => each.guest === 'greta')
  // 120 × 5.5 %, 110 × 12 %, 125 × 12.5 %, 70 × 7 %.
  expect(greta?.poured.map(({ ethanolMl }) => Math.round(ethanolMl * 1000) / 1000)).toEqual([6.6, 13.2, 15.625, 4.9])
  expect(greta?.poured.map(({ soFarMl }) => Math.round(soFarMl * 1000) / 1000)).toEqual([6.6, 19.8, 35.425, 40.325])
  expect(greta?.perHourMl).toBeCloseTo(40.325 / 2, 10)
  expect(had.find((each) => each.guest === 'yusuf')?.ethanolMl).toBe(0)
  expect(had.find((each) => each.guest === 'hanne')?.ethanolMl).toBe(0)
})

test('DR4 guidance is said where it is passed, with its source: NHMRC 2020 (quoted), UK CMOs 2016 (quoted), US 2020–25 (memory)', () => {
  const kinds = (rules: 'uk' | 'us' | 'au' | 'strictest', ml: number, anHour: number | null = null) =>
    moderation(rules, ml, anHour).map((note) => (note.kind === 'day' ? `${note.most} for ${note.who}` : note.kind))
  expect(kinds('au', 50)).toEqual([])
  expect(kinds('au', 51)).toEqual(['4 for anybody'])
  expect(kinds('us', 20)).toEqual(['1 for women'])
  expect(kinds('us', 40)).toEqual(['1 for women', '2 for men'])
  expect(kinds('uk', 40, 11)).toEqual(['pace', 'week'])
  expect(kinds('uk', 40, 10)).toEqual(['week'])
  expect(kinds('strictest', 51, 20)).toEqual(['pace', '1 for women', '2 for men', '4 for anybody', 'week'])
  expect(kinds('strictest', 0)).toEqual([])
})
