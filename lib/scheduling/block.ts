import { type Act, type LagModel, NEVER, type ServingModel } from './model.ts'
import { isMovable } from './movable.ts'
import type { Place } from './place.ts'
import type { Random } from './random.ts'
import { deadline, type State } from './state.ts'

/** What moves together by so many ticks, with where each activity was. */
export interface Block {
  readonly by: number
  readonly was: Map<Act, Place>
  readonly servings: Set<ServingModel>
}

export const newBlock = (by: number): Block => ({ by, was: new Map(), servings: new Set() })

/** Activities in a block at most. */
const MOST = 40
/** The chance that a wish, which may be bent, holds two things together. */
const TIED = 0.9
/** The chance that later servings come along with one that moves. */
const ALONG = 0.7

/** Joins an activity, and all that lags and the table tie to it so tightly that it has to follow. */
export const join = (state: State, block: Block, act: Act, random: Random): void => {
  const place = state.places[act.index]
  if (!place || !isMovable(state, act) || block.was.has(act) || block.was.size >= MOST) return
  block.was.set(act, place)
  const { by } = block
  const far = Math.abs(by)
  for (const lag of act.succs) {
    const slack = slackOf(state, lag)
    if (slack && (by > 0 ? slack.hard < far : slack.soft < far && random.unit() < TIED)) join(state, block, lag.to, random)
  }
  for (const lag of act.preds) {
    const slack = slackOf(state, lag)
    if (slack && (by < 0 ? slack.hard < far : slack.soft < far && random.unit() < TIED)) join(state, block, lag.from, random)
  }
  if (by > 0 && act.delivery && place.end + by > deadline(state, act)) joinServing(state, block, act.delivery.serving, random)
}

/** By how much the two may come nearer to each other, and by how much further apart. */
const slackOf = (state: State, { from, to, fromEnd, least, most }: LagModel): { hard: number; soft: number } | undefined => {
  const before = state.places[from.index]
  const after = state.places[to.index]
  if (!before || !after || from === to) return undefined
  const apart = after.start - (fromEnd ? before.end : before.start)
  return { hard: apart - least, soft: most >= NEVER ? NEVER : most - apart }
}

/** Joins a serving, with what has to be ready for it sooner, or would wait for it too long. */
export const joinServing = (state: State, block: Block, serving: ServingModel, random: Random): void => {
  if (serving.served || block.servings.has(serving)) return
  block.servings.add(serving)
  const { by } = block
  for (const delivery of state.model.deliveries) {
    if (delivery.serving !== serving) continue
    for (const act of delivery.acts) {
      const place = state.places[act.index]
      if (!place) continue
      const follows = by < 0 ? place.end > deadline(state, act) + by : isAtEnd(act)
      if (follows) join(state, block, act, random)
    }
  }
  const next = state.model.servings[serving.index + 1]
  if (next && random.unit() < ALONG) joinServing(state, block, next, random)
}

const isAtEnd = (act: Act): boolean => act.delivery?.last === act || act.activity.plating
