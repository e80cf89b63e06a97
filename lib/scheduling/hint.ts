import { startBounds } from './bounds.ts'
import { insertAll } from './construct.ts'
import { putFacts } from './facts.ts'
import { fits } from './fits.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, Model } from './model.ts'
import { momentsFrom, repairMoments } from './moments.ts'
import { happened } from './price.ts'
import type { Random } from './random.ts'
import type { Placement, Schedule } from './schedule.ts'
import { newState, put, type State } from './state.ts'

/** A known schedule repaired to this problem: what still fits where it was stays, the rest finds a new place. */
export const startFrom = (model: Model, known: Schedule, random: Random): State => {
  const moments = new Map(known.servings.map((serving) => [serving.serving, serving.toTable]))
  const asEarly = momentsFrom(model, [])
  const wished = model.servings.map((serving, i) => moments.get(serving.id) ?? asEarly[i] ?? serving.earliest)
  const state = newState(model, repairMoments(model, wished), random)
  putFacts(state)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
  const before = new Map(known.placements.map((placement) => [placement.activity, placement]))
  const free = model.acts.filter((act) => !act.fact && act.modes.length > 0)
  for (const act of free) {
    const placement = before.get(act.activity.id)
    if (placement) putAsWas(state, act, placement)
  }
  for (const delivery of model.deliveries) if (!happened(state, delivery)) refreshKeep(state, delivery)
  insertAll(state, free, random, (act) => {
    const start = before.get(act.activity.id)?.start
    return start === undefined ? { blink: 0 } : { start, blink: 0 }
  })
  return state
}

const putAsWas = (state: State, act: Act, { mode: index, start, end, cooks }: Placement): void => {
  const mode = act.modes.find((one) => one.index === index)
  const team = mode?.teams.find((one) => one.cooks.length === cooks.length && one.cooks.every((cook) => cooks.includes(cook.id)))
  if (!mode || !team) return
  const len = mode.upTo > mode.likely ? Math.max(mode.likely, Math.min(mode.upTo, end - start)) : team.len
  const { lo, hi } = startBounds(state, act, len)
  const place = start >= lo && start <= hi ? fits(state, act, mode, team, start, len) : undefined
  if (place) put(state, place)
}
