import { test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import { awayOf } from '#lib/scheduling/attention.ts'
import { compile } from '#lib/scheduling/compile.ts'
import { construct } from '#lib/scheduling/construct.ts'
import { placeOfTrial, tries } from '#lib/scheduling/fits.ts'
import { insert, trialPrice } from '#lib/scheduling/insert.ts'
import { begin, forget, rollback } from '#lib/scheduling/journal.ts'
import { refreshKeep } from '#lib/scheduling/keeping.ts'
import { repairMoments } from '#lib/scheduling/moments.ts'
import { look, startPrice } from '#lib/scheduling/outlook.ts'
import { coldStarts, NEVER_WORTH, price } from '#lib/scheduling/price.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { randomFrom } from '#lib/scheduling/random.ts'
import { put, putKeep, type State, setMoments, take } from '#lib/scheduling/state.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { slowPrice } from '#tests/support/slow-price.ts'
import { holdsOnAll, seeds } from './seeds.ts'

/** Some activities anew, or some servings elsewhere. */
const disturb = (state: State, random: ReturnType<typeof randomFrom>): void => {
  const { model } = state
  if (random.unit() < 0.3) {
    const far = 1 + random.below(30)
    const moments = repairMoments(
      model,
      state.moments.map((moment) => moment + (random.unit() < 0.5 ? far : -random.below(far))),
    )
    for (const delivery of model.deliveries) putKeep(state, delivery, undefined)
    setMoments(state, moments)
    for (const delivery of model.deliveries) refreshKeep(state, delivery)
  }
  const free = model.acts.filter((act) => !act.fact && act.modes.length > 0)
  const out = free.filter(() => random.unit() < 4 / free.length)
  for (const act of out) {
    take(state, act)
    if (act.delivery) refreshKeep(state, act.delivery)
  }
  for (const act of out) if (random.unit() < 0.9) insert(state, act, random, { blink: 0.2 })
}

/** Takes something away and puts it back: what its price is said to be must be by how much the price of all rises. */
const risesAsSaid = (state: State, random: ReturnType<typeof randomFrom>): string | null => {
  const { model } = state
  const { weights } = model.problem
  const all = model.acts.filter((act) => !act.fact && state.places[act.index])
  const act = all[random.below(all.length)]
  const place = act && state.places[act.index]
  const bound = [
    ...(act?.preds ?? []).map(({ from }) => from),
    ...(act?.succs ?? []).map(({ to }) => to),
    ...(act?.heralds ?? []).map(({ last }) => last),
  ]
  // What is yet to be placed around it is guessed at, not priced.
  if (!act || !place || bound.some((other) => !state.places[other.index])) return null
  if (act.delivery) putKeep(state, act.delivery, undefined)
  take(state, act)
  const before = price(state)
  const awayBefore = awayOf(state.attention)
  const coldBefore = coldStarts(state).length
  look(state, act)
  const len = place.end - place.start
  const { trial } = state.scratch
  if (!tries(state, trial, act, place.mode, { cooks: place.team, len }, place.start, len))
    return `${act.activity.id} does not fit where it was`
  const said = trialPrice(state, act, trial, false, Number.POSITIVE_INFINITY)
  const floor = startPrice(state, act, place.start, len)
  put(state, placeOfTrial(trial))
  const cold = coldBefore + coldStarts(state).length
  const rise = price(state) - before + weights.left
  if (act.delivery) refreshKeep(state, act.delivery)
  if (cold === 0 && Math.abs(rise - said) > 1e-6) return `${act.activity.id} raises the price by ${rise}, not by ${said}`
  // What joins a stretch of all hosts away to one in which something is plated excuses it: that the floor does not foresee.
  const excused = weights.allAway * Math.max(0, awayBefore - awayOf(state.attention))
  return floor > said + excused + 1e-6 ? `${act.activity.id} costs less than its floor` : null
}

/** All that a state holds, but for what is only worked out when asked. */
const picture = (state: State): unknown => ({
  places: state.places.map((place) => place && [place.start, place.end, place.mode.index, place.team, place.touches, place.kit]),
  moments: [...state.moments],
  lanes: [state.cookLanes, state.kitLanes, state.groupLanes].map((lanes) =>
    lanes.map((lane) => lane.map(({ who, from, to, kind }) => [who, from, to, kind])),
  ),
  vessels: state.vessels.map(({ kit, item, members }) => [kit, item?.from, item?.to, members.map(({ act }) => act.index).sort()]),
  keeps: state.keeps.map((keep) => keep && [keep.from, keep.to, keep.kit, keep.clash]),
  latest: [...state.latest],
  ripe: [...state.ripe],
  tally: { ...state.tally },
  missed: [...state.attention.missed],
  calm: [...state.attention.calm],
  up: state.attention.up.map((up) => [...up]),
  away: awayOf(state.attention),
  meal: state.attention.meal,
})

const complaint = (problem: Problem, seed: number, moves: number): string | null => {
  const random = randomFrom(seed)
  const state = construct(compile(problem), random)
  for (let move = 0; move < moves; move++) {
    const start = begin(state)
    const before = random.unit() < 0.1 ? JSON.stringify(picture(state)) : undefined
    const cost = price(state)
    disturb(state, random)
    const unlike = risesAsSaid(state, random)
    if (unlike !== null) return `after ${move} moves ${unlike}`
    const apart = price(state) - slowPrice(state) - NEVER_WORTH * coldStarts(state).length
    if (Math.abs(apart) > 1e-6) return `after ${move} moves the kept price is ${apart} above the one worked out anew`
    if (random.unit() < 0.5) {
      forget(state)
      continue
    }
    rollback(state, start)
    if (price(state) !== cost) return `after ${move} moves going back gives another price`
    if (before !== undefined && JSON.stringify(picture(state)) !== before)
      return `after ${move} moves going back gives another state`
  }
  return null
}

test('S1 the price that moves keep in step is the one worked out anew, and going back leads back', () => {
  holdsOnAll(seeds(1, 150), (seed) => complaint(randomProblem(seed), seed, 30))
  for (const size of Object.values(SIZES))
    holdsOnAll(seeds(301, 2), (seed) => complaint(toProblem(randomEvening(seed, size)).problem, seed, 20))
})
