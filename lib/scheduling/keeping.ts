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
  const found = kitsFor(state, { who, uses, from, to, touches: [], vessel: -1, isActivity: false })
  const forced = isFact && uses.every((use) => use.kits.length > 0) ? uses.map((use) => use.kits[0] ?? 0) : undefined
  const kit = found?.kit ?? forced
  const items: { lane: Lane; item: Item }[] = []
  for (const [i, index] of (kit ?? []).entries()) {
    const use = uses[i]
    const lane = state.kitLanes[index]
    if (use && lane) items.push({ lane, item: { ...holdItem(who, from, to, use.amount), low: use.low, high: use.high } })
  }
  return { from, to, kit, items }
}
