import { type Block, join, joinServing, newBlock } from './block.ts'
import { inTheWayAt } from './blockers.ts'
import { startBounds } from './bounds.ts'
import { backward } from './construct.ts'
import { fits } from './fits.ts'
import { insert } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, ServingModel } from './model.ts'
import { repairMoments } from './moments.ts'
import { afterWhatStays, movable } from './movable.ts'
import type { Place } from './place.ts'
import type { Random } from './random.ts'
import { put, putKeep, type State, setMoments, take } from './state.ts'
import { type Trouble, troubles } from './troubles.ts'

const STEPS = [1, 1, 2, 3, 5, 8, 13, 21, 34]
/** One start tried, where an insertion tries many. */
const STEP = 0.25
/** How many of those that broke a wish before may use the room left behind. */
const SORE = 2

/**
 * A block of activities and servings moves by so many ticks, with all that is tied to it; what stands in its way is pushed
 * on by as much (ejection chains, Glover 1996, "Ejection chains, reference structures and alternating path methods"). What
 * breaks a wish may then use the room that was left behind.
 */
export const push = (state: State, random: Random): void => {
  const known = troubles(state)
  const { seed, by } = chooseSeed(state, known, random)
  if (!seed || by === 0) return
  const block = newBlock(by)
  if ('earliest' in seed) joinServing(state, block, seed, random)
  else join(state, block, seed, random)
  if (!moveServings(state, block) && block.was.size === 0) return
  moveActs(state, block, random)
  const sore = [...new Set(known.flatMap(({ seed: act }) => ('earliest' in act || block.was.has(act) ? [] : [act])))]
  for (let i = 0; i < SORE && sore.length > 0; i++) {
    const [act] = sore.splice(random.below(sore.length), 1)
    if (act) again(state, act, random)
  }
}

/** Something that breaks a wish, by as much as it does; or anything by some ticks. */
const chooseSeed = (
  state: State,
  known: readonly Trouble[],
  random: Random,
): { readonly seed: Act | ServingModel | undefined; readonly by: number } => {
  const luck = random.unit()
  const some = (STEPS[random.below(STEPS.length)] ?? 1) * (random.unit() < 0.5 ? 1 : -1)
  const trouble = known[random.below(known.length)]
  if (trouble && luck < 0.3) return { seed: trouble.seed, by: random.unit() < 0.5 ? trouble.by : some }
  if (luck < 0.8) return { seed: state.model.servings[random.below(state.model.servings.length)], by: some }
  const acts = movable(state)
  return { seed: acts[random.below(acts.length)], by: some }
}

/** Says whether any moment changed. */
const moveServings = (state: State, { servings, was, by }: Block): boolean => {
  if (servings.size === 0) return false
  const { model } = state
  const wished = state.moments.map((moment, i) => (servings.has(model.servings[i] as ServingModel) ? moment + by : moment))
  const moments = repairMoments(
    model,
    afterWhatStays(state, wished, (act) => was.has(act)),
  )
  if (moments.every((moment, i) => moment === state.moments[i])) return false
  for (const delivery of model.deliveries) putKeep(state, delivery, undefined)
  setMoments(state, moments)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
  return true
}

/** All of the block to where it goes, and what is in the way as far; what fits nowhere there finds a place of its own. */
const moveActs = (state: State, block: Block, random: Random): void => {
  const { was, by } = block
  const taken: Act[] = []
  const leave = () => {
    for (const act of [...was.keys()].slice(taken.length)) {
      taken.push(act)
      if (act.delivery) putKeep(state, act.delivery, undefined)
      take(state, act)
    }
  }
  leave()
  const loose: Act[] = []
  for (const act of taken) {
    const place = was.get(act) as Place
    let moved = placeAt(state, act, place, by)
    if (!moved) {
      for (const other of inTheWayAt(state, place, by)) join(state, block, other, random)
      if (was.size > taken.length) {
        leave()
        moved = placeAt(state, act, place, by)
      }
    }
    if (moved) put(state, moved)
    else loose.push(act)
  }
  for (const { delivery } of taken) if (delivery) refreshKeep(state, delivery)
  for (const act of backward(state, loose)) insert(state, act, random, { start: (was.get(act) as Place).start + by, blink: 0 })
}

const placeAt = (state: State, act: Act, { mode, team, start: before, end }: Place, by: number): Place | undefined => {
  state.steps += STEP
  const start = before + by
  const len = end - before
  const { lo, hi } = startBounds(state, act, len)
  return start < lo || start > hi ? undefined : fits(state, act, mode, { cooks: team, len }, start, len)
}

const again = (state: State, act: Act, random: Random): void => {
  const start = state.places[act.index]?.start
  take(state, act)
  if (act.delivery) refreshKeep(state, act.delivery)
  insert(state, act, random, { blink: 0, ...(start === undefined ? {} : { start }) })
}
