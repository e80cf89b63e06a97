import type { Act, ServingModel } from './model.ts'
import { movable } from './movable.ts'
import { readyOf } from './price.ts'
import type { State } from './state.ts'
import { overBy } from './tally.ts'

/** A wish that would be kept if this moved by so many ticks and nothing else did. */
export interface Trouble {
  readonly seed: Act | ServingModel
  readonly by: number
}

/** Each broken lag and keeping twice: what comes first would be later, or what comes then earlier. */
export const troubles = (state: State): Trouble[] => {
  const found: Trouble[] = []
  for (const act of movable(state)) {
    const place = state.places[act.index]
    if (!place) continue
    for (const lag of act.preds) {
      const over = overBy(lag, state.places[lag.from.index], place)
      if (over === 0) continue
      found.push({ seed: act, by: -over })
      if (!lag.from.fact) found.push({ seed: lag.from, by: over })
    }
    const { delivery } = act
    if (!delivery || delivery.serving.served || place.end < readyOf(state, delivery)) continue
    const over = (state.moments[delivery.serving.index] as number) - delivery.early - place.end - delivery.most
    if (over > 0) found.push({ seed: act, by: over }, { seed: delivery.serving, by: -over })
  }
  return found
}
