import { kitsFor } from './kit-fits.ts'
import type { DeliveryModel } from './model.ts'
import { readyOf } from './price.ts'
import { type Item, type Keep, type Lane, putKeep, type State } from './state.ts'

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
  const found = kitsFor(state, { who, uses: delivery.uses, from, to, touches: [], vessel: -1, isActivity: false })
  const isFact = delivery.allFacts || delivery.serving.served !== undefined
  const kit =
    found?.kit ??
    (isFact && delivery.uses.every((use) => use.kits.length > 0) ? delivery.uses.map((use) => use.kits[0] ?? 0) : undefined)
  const items: { lane: Lane; item: Item }[] = []
  for (const [i, index] of (kit ?? []).entries()) {
    const use = delivery.uses[i]
    const lane = state.kitLanes[index]
    if (!use || !lane) continue
    const { amount, low, high } = use
    items.push({
      lane,
      item: { who, from, to, kind: 'hold', spot: -1, short: false, amount, low, high, door: 0, touches: [] },
    })
  }
  return { from, to, kit, items }
}
