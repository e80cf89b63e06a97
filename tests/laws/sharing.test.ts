import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'
import type { Claim } from '#lib/domain/people.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { type Part, type Split, suggestSplit } from '#lib/sharing/split.ts'
import { dice } from '#tests/support/dice.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { fixedSeeds, holdsOnAll, shareOf } from './seeds.ts'

interface Shared {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly split: Split
}

const shared = (seed: number): Shared => {
  const made = randomEvening(seed, seed % 3 === 0 ? SIZES.middle : SIZES.small)
  const d = dice(seed)
  // Most evenings have claims of dishes; some of single steps and of courses too.
  const more: Claim[] = [
    ...made.steps.filter(() => d.chance(0.05)).map(({ id }) => ({ target: id, cook: d.pick(made.cooks).id })),
    ...made.courses.filter(() => d.chance(0.1)).map(({ id }) => ({ target: id, cook: d.pick(made.cooks).id })),
  ]
  const evening = { ...made, claims: d.chance(0.2) ? [] : [...made.claims, ...more] }
  const order = planEvening(evening, { budget: { steps: 300, seed: 1 }, quick: true })
  return { evening, order, split: suggestSplit(evening, order) }
}

const taken = (evening: Evening, parts: readonly Part[]): Evening => ({
  ...evening,
  claims: [...evening.claims, ...parts.flatMap(({ claims }) => claims)],
})

/** Who is bound to stand at a step by its claim, with what the order says of it: one each batch. */
const bound = (evening: Evening, order: RunningOrder): { step: Step; cook: string; cue: Cue }[] => {
  const held = nearestClaims(evening)
  return evening.steps.flatMap((step) => {
    const cook = held(step)?.cook
    return cook === undefined ? [] : order.cues.filter((cue) => cue.step === step.id).map((cue) => ({ step, cook, cue }))
  })
}

const isThere = (evening: Evening, cook: string, kitchen: string, at: number): boolean =>
  evening.cooks
    .find(({ id }) => id === cook)
    ?.presence.some(
      (stay) => stay.kitchen === kitchen && epochMsOf(evening, stay.from) <= at && at <= epochMsOf(evening, stay.to),
    ) ?? false

const notThere = ({ evening, order }: Shared, parts: readonly Part[]): string | null => {
  const before = nearestClaims(evening)
  for (const { step, cook, cue } of bound(taken(evening, parts), order)) {
    if (before(step) !== null || step.role === 'carry' || cue.cooks.length === 0) continue
    for (const at of [Date.parse(cue.start), Date.parse(cue.end)])
      if (!isThere(evening, cook, cue.kitchen, at)) return `${cook} has ${step.id} and is not in ${cue.kitchen} at ${cue.start}`
  }
  return null
}

const handsOn = ({ step, cue }: { step: Step; cue: Cue }): boolean =>
  step.ways[cue.way]?.care === 'hands-on' && step.role !== 'carry'

const twoAtOnce = ({ evening, order, split }: Shared): string | null => {
  const held = nearestClaims(evening)
  // Batches that the order gives to several cooks at once cannot be one cook's at the same times.
  const isParted = ({ id }: Step): boolean =>
    new Set(order.cues.filter(({ step }) => step === id).flatMap(({ cooks }) => cooks)).size > 1
  const all = bound(taken(evening, split.parts), order).filter((one) => handsOn(one) && !isParted(one.step))
  for (const one of all)
    for (const other of all) {
      if (one.step.id === other.step.id || one.cook !== other.cook || (held(one.step) && held(other.step))) continue
      if (one.cue.start < other.cue.end && other.cue.start < one.cue.end)
        return `${one.cook} has ${one.step.id} and ${other.step.id} at once`
    }
  return null
}

const uncovered = ({ evening, order, split }: Shared): string | null => {
  const held = nearestClaims(taken(evening, split.parts))
  const on = new Set(evening.dishes.filter(({ state }) => state === 'on').map(({ id }) => id))
  const left = evening.steps.filter((step) => (step.dish === null || on.has(step.dish)) && held(step) === null)
  const wrong = left.filter(({ id }) => !split.unplaced.includes(id) || order.cues.some(({ step }) => step === id))
  return wrong.length > 0 ? `nobody gets ${wrong.map(({ id }) => id).join(', ')}` : null
}

const takesAway = ({ evening, split }: Shared): string | null => {
  const wanted = split.parts.flatMap(({ claims }) => claims.map(({ target }) => target))
  const all = [...evening.claims.map(({ target }) => target), ...wanted]
  if (new Set(wanted).size < wanted.length) return 'something is given twice'
  if (wanted.some((target) => evening.claims.some((claim) => claim.target === target))) return 'a claim is taken away'
  const [before, after] = [evening, taken(evening, split.parts)].map(nearestClaims)
  const moved = evening.steps.filter((step) => before?.(step) && before(step)?.cook !== after?.(step)?.cook)
  // A dish under a course that somebody has is theirs, and so is each of its steps.
  return moved.length > 0 ? `${moved.map(({ id }) => id).join(', ')} of ${all.length} changed hands` : null
}

test('U32 a suggested split covers what nobody has, takes no claim away, and asks nobody to be elsewhere or at two things', () => {
  let parts = 0
  let exceptions = 0
  let kept = 0
  holdsOnAll(fixedSeeds(1, shareOf(14)), (seed) => {
    const one = shared(seed)
    const d = dice(seed + 1000)
    parts += one.split.parts.length
    exceptions += one.split.parts.reduce((sum, { but }) => sum + but.length, 0)
    kept += one.evening.claims.length
    const some = one.split.parts.filter(() => d.chance(0.5))
    const again = suggestSplit(one.evening, one.order)
    return (
      takesAway(one) ??
      uncovered(one) ??
      notThere(one, one.split.parts) ??
      notThere(one, some) ??
      twoAtOnce(one) ??
      (JSON.stringify(again) === JSON.stringify(one.split) ? null : 'asked twice, two answers')
    )
  })
  expect(parts).toBeGreaterThan(20)
  expect(exceptions).toBeGreaterThan(5)
  expect(kept).toBeGreaterThan(10)
})

test('U32 an evening that is shared out as suggested can be planned: nothing is left without a cook that was not before', () => {
  const withoutCook = ({ clashes }: RunningOrder): number => clashes.filter(({ kind }) => kind === 'no-cook').length
  holdsOnAll(fixedSeeds(40, shareOf(4)), (seed) => {
    const { evening, order, split } = shared(seed)
    const after = planEvening(taken(evening, split.parts), { budget: { steps: 300, seed: 1 }, quick: true })
    return withoutCook(after) > withoutCook(order) ? `${withoutCook(after)} steps have no cook` : null
  })
})
