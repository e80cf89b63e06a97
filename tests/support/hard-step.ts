import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { inReadingOrder } from '#lib/plan/reading-order.ts'
import { readEvening } from './read-evening.ts'

/** A step in which every field of the schema is said: three ways, six touches, five waits, all kinds of kit. Of our own invention. */
export const HARD = 'hard'

const hardStep = (others: readonly Step[]): Step => ({
  id: HARD,
  dish: 'lamb',
  order: 'zz',
  does: 'Cook the filled squash, then glaze it',
  role: 'make',
  where: 'kitchen',
  ways: [
    {
      care: 'leave',
      cooks: 1,
      takes: { least: 'PT1H10M', likely: 'PT1H20M', most: 'PT1H45M' },
      upTo: 'PT2H15M',
      touches: [
        { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
        { when: { every: 'PT20M' }, does: 'baste', takes: 'PT2M', lateBy: 'PT5M' },
        { when: { every: 'PT45M' }, takes: 'PT1M', lateBy: 'PT3M' },
        { when: { every: 'PT30M' }, does: 'turn', takes: 'PT1M30S', lateBy: 'PT4M' },
        { when: { every: 'PT1H' }, takes: 'PT1M', lateBy: 'PT10M' },
        { when: 'out', takes: 'PT1M', lateBy: 'PT2M' },
      ],
      uses: [
        { kind: 'oven', oven: 'oven', shelves: 1, lowC: 180, highC: 195, preheated: true, doorShut: 'PT15M' },
        { kind: 'tool', tool: 'deep tin', count: 2 },
      ],
    },
    {
      care: 'eye',
      cooks: 1,
      takes: { least: 'PT40M', likely: 'PT50M', most: 'PT1H' },
      touches: [],
      uses: [
        { kind: 'ring', size: 'large' },
        { kind: 'worktop', places: 2 },
      ],
    },
    {
      care: 'hands-on',
      cooks: 2,
      takes: { least: 'PT25M', likely: 'PT30M', most: 'PT40M' },
      touches: [],
      uses: [{ kind: 'cold', keep: 'frozen', places: 1 }],
    },
  ],
  vessel: 'shared-pan',
  after: others.slice(0, 5).map((other, index) => ({
    step: other.id,
    from: index % 2 === 0 ? 'end' : 'start',
    least: ['PT0S', 'PT10M', 'PT0S', 'PT2H', 'PT0S'][index] ?? 'PT0S',
    ...(index === 4 ? {} : { most: ['PT0S', 'PT20M', 'PT30M', 'P1D'][index] ?? 'PT0S' }),
    kind: index === 3 ? 'safety' : 'quality',
  })),
  earliest: { day: -2, time: '17:00' },
  latest: { day: 0, time: '14:00' },
  batch: { portions: 4, together: 2 },
  guard: { for: 'nuts', does: 'cover' },
  until: { coreC: 74, sign: 'a knife goes through without pushing' },
})

/** A part of the lamb evening with that step in it, and another one in the same pan. */
export const hardEvening = (): Evening => {
  const lamb = readEvening('a-lamb')
  const dishes = lamb.dishes.filter((dish) => dish.id === 'soup' || dish.id === 'lamb')
  const kept = lamb.steps.filter((step) => step.dish === 'soup' || step.id === 'B1' || step.id === 'B2')
  const has = new Set(kept.map((step) => step.id))
  const steps = kept.map((step) => ({
    ...step,
    after: step.after.filter((lag) => has.has(lag.step)),
    ...(step.id === 'B1' ? { vessel: 'shared-pan' } : {}),
  }))
  const hard = hardStep(steps.filter((step) => step.dish === 'soup'))
  const parsed = parseEvening({
    ...lamb,
    dishes,
    steps: [...steps, hard],
    ingredients: [],
    drinks: [],
    guests: [],
    claims: [],
    night: [],
  })
  if (!parsed.ok) throw new Error(`not an evening: ${JSON.stringify(parsed.error)}`)
  return inReadingOrder(parsed.value)
}
