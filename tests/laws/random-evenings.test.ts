import { isDeepStrictEqual } from 'node:util'
import { test } from 'vitest'
import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { planEvening } from '#lib/order/engine.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { brokenKit, wrongClashes } from '#tests/support/check-kit.ts'
import { brokenRules } from '#tests/support/check-rules.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { randomNight } from '#tests/support/random-night.ts'
import { randomPotluck } from '#tests/support/random-potluck.ts'
import { complaint } from './accepted.ts'
import { holdsOnAll, seeds } from './seeds.ts'

const accepted = (seed: number, size: keyof typeof SIZES, steps: number): string | null => {
  const { problem } = toProblem(randomEvening(seed, SIZES[size]))
  return complaint(problem, solve(problem, { steps, seed }))
}

test('S1 the verifier accepts every schedule of a random evening of 30 steps', () => {
  holdsOnAll(seeds(1, 40), (seed) => accepted(seed, 'small', 100))
})

test('S1 the verifier accepts every schedule of a random evening of 60 steps', () => {
  holdsOnAll(seeds(1, 10), (seed) => accepted(seed, 'middle', 100))
})

test('S1 the verifier accepts every schedule of a random evening of 120 steps', () => {
  holdsOnAll(seeds(1, 4), (seed) => accepted(seed, 'large', 100))
})

test('S1 O28 the verifier accepts every schedule of a random potluck, and its order keeps presence, ways, trips and limits', () => {
  holdsOnAll(seeds(1, 12), (seed) => {
    const evening = randomPotluck(seed)
    const { problem } = toProblem(evening)
    const said = complaint(problem, solve(problem, { steps: 100, seed }))
    if (said !== null) return said
    const order = planEvening(evening, { budget: { steps: 100, seed }, quick: true })
    const broken = [...brokenRules(evening, order), ...brokenKit(evening, order), ...wrongClashes(evening, order)]
    return broken.length > 0 ? broken.join('; ') : null
  })
})

/** Later seeds on which two things under way were once given to one cook. */
const ONCE_BROKEN = [36, 39, 43, 57]

test('S1 the verifier accepts every schedule on the night, with slips, planned again from what was told', () => {
  holdsOnAll([...seeds(1, 25), ...(process.env.SEED === undefined ? ONCE_BROKEN : [])], (seed) => {
    const evening = randomEvening(seed)
    const order = planEvening(evening, { budget: { steps: 50, seed } })
    const night = randomNight(evening, order, seed)
    const parsed = parseEvening(night.evening)
    if (!parsed.ok) return JSON.stringify(parsed.error)
    const { problem } = toProblem(parsed.value, { now: night.now, previous: order })
    return complaint(problem, solve(problem, { steps: 50, seed }))
  })
})

test('S2 the same evening, seed and steps give the same schedule', () => {
  holdsOnAll(seeds(1, 4), (seed) => {
    const [one, two] = [1, 2].map(() => solve(toProblem(randomEvening(seed)).problem, { steps: 150, seed }))
    return isDeepStrictEqual(one, two) ? null : 'two schedules'
  })
})

test('D5 a random evening that is printed and parsed is the same, and prints the same bytes', () => {
  holdsOnAll(seeds(1, 40), (seed) => {
    const evening = randomEvening(seed, [SIZES.small, SIZES.middle, SIZES.large][seed % 3])
    const printed = printEvening(evening)
    const parsed = parseEvening(JSON.parse(printed))
    if (!parsed.ok) return JSON.stringify(parsed.error)
    if (!isDeepStrictEqual(parsed.value, evening)) return 'another evening'
    return printEvening(parsed.value) === printed ? null : 'other bytes'
  })
})
