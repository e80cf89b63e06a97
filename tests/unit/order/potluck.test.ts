import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { applyRemedy } from '#lib/order/apply-remedy.ts'
import { planEvening } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import { withWaysOut } from '#lib/order/ways-out.ts'
import { brokenKit, wrongClashes } from '#tests/support/check-kit.ts'
import { troubles } from '#tests/support/check-order.ts'
import { brokenRules } from '#tests/support/check-rules.ts'
import {
  cook,
  course,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  min,
  role,
  step,
  where,
} from '#tests/support/evening-builders.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { far, HELD_OUT_POTLUCKS, POTLUCKS } from '#tests/support/potlucks.ts'

const plan = (of: Evening, steps = 1_200): RunningOrder => planEvening(of, { budget: { steps, seed: 1 }, quick: true })

const clockOf = (order: RunningOrder, id: string): [start: string, end: string] => {
  const cue = order.cues.find((one) => one.step === id)
  return [cue?.start.slice(11, 16) ?? '', cue?.end.slice(11, 16) ?? '']
}

/** A tart from the mill, where Noor is until six; she says that she is at the host's at a quarter past. */
const fromTheMill = (toTableMost?: string): Evening =>
  evening(
    {
      kitchens: [
        kitchen('home', HOME_KIT),
        { ...kitchen('mill', [], 15), ...(toTableMost === undefined ? {} : { toTableMost }) },
      ],
      cooks: [cook('kim'), cook('noor', ['mill 12:00 18:00', 'home 18:15 23:00'], { host: false })],
    },
    course(
      'main',
      dish(
        'tart',
        dishWith({ kitchen: 'mill', carry: { how: 'cold', most: min(120), kind: 'quality' } }),
        step('bake', 30),
        step('bring', [12, 15, 25], role('carry'), where('outside'), follows('bake')),
        step('cut', 5, role('plate'), follows('bring')),
      ),
    ),
  )

test('O25 a way is planned as long as on a bad day, and chances reckon with what it likely takes', () => {
  const order = plan(fromTheMill())
  expect(order.clashes).toEqual([])
  const [leaves, there] = clockOf(order, 'bring')
  expect([leaves, there]).toEqual(['18:00', '18:25'])
  expect(order.courses[0]?.onTime).toBe(1)
  expect(brokenRules(fromTheMill(), order)).toEqual([])
})

test('O26 nobody is in another kitchen before the longest way is over: that of what they carry, or the kitchen’s own', () => {
  const early = (of: Evening): Evening => ({
    ...of,
    claims: [{ target: 'lay', cook: 'noor' }],
    steps: [
      ...of.steps,
      { ...step('lay', 10), role: 'chore', latest: { day: 0, time: '18:41' }, earliest: { day: 0, time: '18:10' } },
    ],
  })
  const soon = early(fromTheMill())
  const inTime = plan(soon)
  expect(clockOf(inTime, 'lay')[0] >= '18:25').toBe(true)
  expect(inTime.clashes).toEqual([])
  // With forty minutes on a bad day there is no time left before it must be done.
  const late = early(fromTheMill('PT40M'))
  const order = plan(late)
  expect(order.clashes.map(({ kind, steps }) => [kind, ...steps])).toEqual([['no-cook', 'lay']])
  expect(brokenRules(late, order)).toEqual([])
  expect(problemHash(late)).not.toBe(problemHash(soon))
})

test('O27 carried hot for longer than is safe is a clash that says by how much, and brought cold is a way out of it', () => {
  const order = plan(far)
  const [clash, ...others] = order.clashes
  expect(others).toEqual([])
  // Away by 17:20, as the way may take until 18:30, and not touched before 19:25: 125 min with a limit of 60.
  expect(clash).toMatchObject({ kind: 'safety', steps: ['hotpot-carry'], dish: 'hotpot' })
  const [left, touched] = [Date.parse(clash?.from ?? ''), Date.parse(clash?.to ?? '')]
  expect(new Date(left).toISOString().slice(11, 16)).toBe('17:20')
  expect(clash?.by).toBe(min((touched - left) / 60_000 - 60))
  const way = withWaysOut(far, order, { budget: { steps: 12_000, seed: 1 } }).clashes[0]?.ways[0]
  expect(way).toMatchObject({ kind: 'bring-cold', dish: 'hotpot' })
  expect(way?.said).toMatch(/heated again from 1[89]:\d\d, to 74 °C/)
  if (!way) return
  const cold = applyRemedy(far, way)
  const taken = plan(cold)
  expect(taken.clashes).toEqual([])
  expect([...brokenRules(cold, taken), ...brokenKit(cold, taken), ...troubles(cold, taken)]).toEqual([])
  const [chill, carry, heat, serve] = ['chill', 'carry', 'carry-heat', 'serve'].map((what) =>
    taken.cues.find((one) => one.step === `hotpot-${what === 'chill' ? 'carry-chill' : what}`),
  )
  // Out of one fridge and into the other within two hours, and hot for no longer than it must be.
  expect(Date.parse(chill?.end ?? '')).toBeLessThanOrEqual(Date.parse(carry?.start ?? ''))
  expect(Date.parse(heat?.start ?? '') - Date.parse(chill?.end ?? '')).toBeGreaterThan(0)
  expect(cold.steps.find(({ id }) => id === heat?.step)?.until?.coreC).toBe(74)
  expect(Date.parse(heat?.end ?? '')).toBeLessThanOrEqual(Date.parse(serve?.start ?? ''))
})

test.each([...POTLUCKS, loadEvening('potluck'), ...HELD_OUT_POTLUCKS].map((of) => [of.id, of] as const))(
  'O28 H20 the potluck “%s” keeps presence, ways, one trip a hole, carrying limits, oven and fridge',
  (id, of) => {
    const order = plan(of)
    expect([...brokenRules(of, order), ...brokenKit(of, order), ...troubles(of, order), ...wrongClashes(of, order)]).toEqual([])
    expect(order.clashes.filter(({ kind }) => kind === 'safety' || kind.startsWith('no-')).map(({ steps }) => steps)).toEqual(
      id === 'far' ? [['hotpot-carry']] : [],
    )
    // Every dish that is on reaches the table by way of its carrier.
    const carried = of.steps.filter((one) => one.role === 'carry').map((one) => one.id)
    expect(carried.length).toBeGreaterThan(1)
    expect(carried.filter((one) => !order.cues.some(({ step: cue }) => cue === one))).toEqual(
      id === 'far' ? ['hotpot-carry'] : [],
    )
  },
)
