import { expect, test } from 'vitest'
import { parseEvening } from '#lib/domain/parse.ts'
import type { Clash, Remedy, RunningOrder } from '#lib/domain/running-order.ts'
import { applyRemedy } from '#lib/order/apply-remedy.ts'
import { planEvening } from '#lib/order/engine.ts'
import { canonicalJson } from '#lib/order/hash.ts'
import { clashKey, type Outcome, outcomeOf, replan } from '#lib/order/replan.ts'
import { withWaysOut } from '#lib/order/ways-out.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { claimOfRemedy, takeRemedy } from '#lib/plan/commands/take-remedy.ts'
import { readPlan } from '#lib/plan/read.ts'
import { clashingEvening } from '#tests/support/clashing-evening.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'
import { fixedSeeds, holdsOnAll, shareOf } from './seeds.ts'

/** Two in three seeds make an evening with a clash. */
const COUNT = shareOf(12)
const PATIENCE_MS = 240_000 + COUNT * 10_000

/**
 * Later seeds on which a way out once was none: the order that is shown led to a cheaper one that kept the clash, and another
 * clash of the same fight came in its place.
 */
const ONCE_BROKEN = [204, 300]

/** Another search than that which found the way out, from nothing. What stops short has an ample budget before it is wrong. */
const FIRST = { steps: 6_000, seed: 77 }
const AMPLE = { steps: 40_000, seed: 78 }

/** The same from the order that is shown, as the planner goes on from it when the plan has changed. */
const SCREEN = { first: { steps: 4_000, seed: 1 }, ample: { steps: 16_000, seed: 1 } }

interface Answered {
  readonly evening: ReturnType<typeof clashingEvening>
  readonly order: RunningOrder
  readonly clashes: readonly Clash[]
  readonly before: Outcome
}

const answered = (seed: number): Answered => {
  const parsed = parseEvening(JSON.parse(JSON.stringify(clashingEvening(seed))))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
  const evening = parsed.value
  const order = planEvening(evening, { budget: { steps: 4_000, seed: 1 }, quick: true })
  const { clashes } = withWaysOut(evening, order, { budget: { steps: 60_000, seed: 1 } })
  return { evening, order, clashes, before: outcomeOf(order) }
}

const complaint = (after: Outcome | null, clash: Clash, before: Outcome): string | null => {
  if (!after) return 'the verifier refuses what comes of it'
  if (after.clashes.has(clashKey(clash))) return `${clashKey(clash)} stays`
  const [was, is] = [before, after].map(({ clashes }) => [...clashes].reduce((sum, [, by]) => sum + by, 0))
  return (is ?? 0) < (was ?? 0) ? null : `as much is broken: ${JSON.stringify([...after.clashes])}`
}

/** The planner's trial has no words either. */
const NO_WORDS = { chill: '', fridge: '', heat: '' }

/** What the plan reads as when the way out is taken as the screen takes it: one edit, or a claim that the server decides. */
const taken = (evening: Answered['evening'], way: Remedy): Answered['evening'] | string => {
  const doc = planOf(evening)
  let updates = 0
  doc.on('update', () => updates++)
  if (way.kind === 'give-to') carryOutClaim(doc, { role: 'host', cook: null }, claimOfRemedy(evening.claims, way))
  else {
    const made = takeRemedy(doc, way, NO_WORDS)
    if (!made.ok) return `is refused: ${JSON.stringify(made.error)}`
  }
  if (updates !== 1) return `is ${updates} edits`
  const { evening: after, reports } = readPlan(doc)
  return reports.length > 0 ? `leaves a plan with a report: ${reports.join()}` : after
}

interface Replanned {
  readonly after: Answered['evening']
  readonly order: RunningOrder
  readonly clash: Clash
  readonly before: Outcome
}

/**
 * From the order that was shown, as the planner goes on, the clash must be gone; and from nothing. Where a search from nothing
 * ends with it, and with an order that costs more than the other, the search is poor and not the way out.
 */
const complaintOfOrders = ({ after, order, clash, before }: Replanned): string | null => {
  const goOn = (budget: typeof FIRST) => planEvening(after, { hint: order, budget, quick: true })
  const isGone = (one: RunningOrder) => complaint(outcomeOf(one), clash, before) === null
  const first = goOn(SCREEN.first)
  const best = isGone(first) ? first : goOn(SCREEN.ample)
  if (!isGone(best)) return `on the screen, ${complaint(outcomeOf(best), clash, before)}`
  if (complaint(replan(after, { budget: FIRST }), clash, before) === null) return null
  const anew = planEvening(after, { budget: AMPLE, quick: true })
  const said = complaint(outcomeOf(anew), clash, before)
  return said === null || anew.total > best.total ? null : said
}

const isSame = (a: Answered['evening'], b: Answered['evening']): boolean => canonicalJson(a) === canonicalJson(b)

test(
  'O18 L8 every way out of a random evening removes its clash when it is taken by the plan’s own command and planned again from nothing, and leaves less broken',
  () => {
    let evenings = 0
    let clashing = 0
    let helped = 0
    let ways = 0
    const all = [...fixedSeeds(1, COUNT), ...(process.env.SEED === undefined ? ONCE_BROKEN : [])]
    holdsOnAll(all, (seed) => {
      const { evening, order, clashes, before } = answered(seed)
      if (clashes.length > 0) evenings++
      for (const clash of clashes) {
        clashing++
        if (clash.ways.length > 0) helped++
        for (const way of clash.ways) {
          ways++
          const changed = parseEvening(JSON.parse(JSON.stringify(applyRemedy(evening, way))))
          if (!changed.ok) return `${JSON.stringify(way)} makes no evening: ${JSON.stringify(changed.error)}`
          const after = taken(evening, way)
          if (typeof after === 'string') return `${JSON.stringify(way)} ${after}`
          if (!isSame(after, readPlan(planOf(applyRemedy(evening, way))).evening))
            return `${JSON.stringify(way)} is taken with another meaning than it was tried with`
          const said = complaintOfOrders({ after, order, clash, before })
          if (said !== null) return `${JSON.stringify(way)}: ${said}`
        }
      }
      return null
    })
    // The long run says what it looked at.
    if (process.env.SEEDS !== undefined) console.info({ evenings, clashing, helped, ways })
    // A law of nothing would hold: most seeds clash, and most clashes have a way out.
    if (process.env.SEED !== undefined) return
    expect(evenings).toBeGreaterThan(all.length / 2)
    expect(helped).toBeGreaterThan(clashing * 0.5)
    expect(ways).toBeGreaterThan(clashing * 0.5)
  },
  PATIENCE_MS,
)
