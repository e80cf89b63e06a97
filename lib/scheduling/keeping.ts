import { kitsFor } from './kit-fits.ts'
import type { DeliveryModel } from './model.ts'
import { happened, readyOf } from './price.ts'
import { holdItem, type Item, type Keep, type Lane, putKeep, type State } from './state.ts'

/** Works out anew when and where a dish waits for the table. Its keep is without kit when there is no room for it. */
export const refreshKeep = (state: State, delivery: DeliveryModel): void => {
  if (state.keeps[delivery.index]) putKeep(state, delivery, undefined)
  const ready = readyOf(state, delivery)
  if (ready === Number.NEGATIVE_INFINITY) return
  const to = Math.max(ready, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  if (ready < to) putKeep(state, delivery, keepFor(state, delivery, ready, to))
}

const keepFor = (state: State, delivery: DeliveryModel, from: number, to: number): Keep => {
  const who = state.model.acts.length + delivery.index
  const isFact = delivery.serving.served !== undefined || happened(state, delivery)
  const uses = isFact ? delivery.factUses : delivery.uses
  const wanting = { who, uses, from, to, touches: [], vessel: -1, isActivity: false }
  const free = kitsFor(state, wanting)?.kit
  // What waits already waits somewhere: beside other facts if need be, and if need be where something planned is now.
  const besideFacts = free || !isFact ? undefined : kitsFor(amongFacts(state), wanting)?.kit
  const forced = isFact && uses.every((use) => use.kits.length > 0) ? uses.map((use) => use.kits[0] ?? 0) : undefined
  const kit = free ?? besideFacts ?? forced
  const items: { lane: Lane; item: Item }[] = []
  for (const [i, index] of (kit ?? []).entries()) {
    const use = uses[i]
    const lane = state.kitLanes[index]
    if (use && lane) items.push({ lane, item: { ...holdItem(who, from, to, use.amount), low: use.low, high: use.high } })
  }
  return { from, to, kit, clash: !free && !besideFacts && (forced !== undefined || !isFact), items }
}

/** The same lanes without what is planned. */
const amongFacts = (state: State): State => ({
  ...state,
  kitLanes: state.kitLanes.map((lane) => lane.filter((item) => !isPlanned(state, item))),
})

const isPlanned = (state: State, item: Item): boolean => {
  const act = state.model.acts[item.who]
  if (act) return !act.fact
  const delivery = state.model.deliveries[item.who - state.model.acts.length]
  return delivery !== undefined && !delivery.serving.served && !happened(state, delivery)
}
