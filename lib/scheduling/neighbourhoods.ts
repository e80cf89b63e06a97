import { startBounds } from './bounds.ts'
import type { Act } from './model.ts'
import { isMovable, movable } from './movable.ts'
import { blame } from './price.ts'
import type { Random } from './random.ts'
import type { State } from './state.ts'

/** What to take out together, so that it may find a better place together. Facts are never among it. */
export type Neighbourhood = (state: State, random: Random) => readonly Act[]

const MOST = 12

export const oneActivity: Neighbourhood = (state, random) => pickSome(movable(state), 1 + random.below(2), random)

export const oneServing: Neighbourhood = (state, random) => {
  const serving = state.model.servings[random.below(state.model.servings.length)]
  return pickSome(
    movable(state).filter((act) => act.delivery?.serving === serving),
    MOST,
    random,
  )
}

export const oneDelivery: Neighbourhood = (state, random) => {
  const delivery = state.model.deliveries[random.below(state.model.deliveries.length)]
  return pickSome(
    movable(state).filter((act) => act.delivery === delivery),
    MOST,
    random,
  )
}

/** What overlaps a stretch of time around something that is placed. */
export const oneWindow: Neighbourhood = (state, random) => {
  const places = state.places.flatMap((place) => place ?? [])
  const centre = places[random.below(places.length)]
  if (!centre) return []
  const width = 10 + random.below(80)
  const from = centre.start - random.below(width)
  return pickSome(
    movable(state).filter((act) => {
      const place = state.places[act.index]
      return place && place.start < from + width && place.end > from
    }),
    MOST,
    random,
  )
}

/** What shares a kit, near each other in time. */
export const oneKit: Neighbourhood = (state, random) => {
  const lanes = state.kitLanes.filter((lane) => lane.length > 1)
  const lane = lanes[random.below(lanes.length)] ?? []
  return actsAround(
    state,
    lane.map((item) => item.who),
    random,
  )
}

export const oneCook: Neighbourhood = (state, random) => {
  const lane = state.cookLanes[random.below(state.cookLanes.length)] ?? []
  return actsAround(
    state,
    lane.map((item) => item.who),
    random,
  )
}

/** A chain of lags through one activity. */
export const oneChain: Neighbourhood = (state, random) => {
  const acts = movable(state)
  const start = acts[random.below(acts.length)]
  if (!start) return []
  const chain = new Set([start])
  for (const act of chain) {
    if (chain.size >= MOST) break
    for (const lag of act.preds) if (isMovable(state, lag.from) && random.unit() < 0.7) chain.add(lag.from)
    for (const lag of act.succs) if (isMovable(state, lag.to) && random.unit() < 0.7) chain.add(lag.to)
  }
  return [...chain].slice(0, MOST)
}

/** What breaks a wish or has no place; undefined when all is well. */
export const somethingHurt = (state: State, random: Random): Act | undefined => {
  const hurt = movable(state).filter((act) => {
    const place = state.places[act.index]
    return !place || blame(state, place) > 0
  })
  return hurt[random.below(hurt.length)]
}

/** What is bound to it by lags, and what happens where it is and where it would rather be. */
export const inItsWay = (state: State, act: Act, random: Random): readonly Act[] => {
  const place = state.places[act.index]
  const wanted = startBounds(state, act, act.minLen).hi
  // Now and then far and wide, for what is pushed may have to push in turn.
  const wide = movable(state).length > MOST && random.unit() < 0.25
  const margin = random.below(wide ? 180 : 30)
  const from = Math.min(place?.start ?? wanted, wanted) - margin
  const to = Math.max(place?.end ?? wanted, wanted + act.minLen) + margin
  const bound = new Set([...act.preds.map((lag) => lag.from), ...act.succs.map((lag) => lag.to)])
  const near = movable(state).filter((other) => {
    const there = state.places[other.index]
    return other !== act && there && (bound.has(other) ? random.unit() < 0.7 : there.start < to && there.end > from)
  })
  return pickSome(near, wide ? 2 * MOST : MOST + 4, random)
}

const actsAround = (state: State, whos: readonly number[], random: Random): readonly Act[] => {
  const acts = [...new Set(whos)].flatMap((who) => state.model.acts[who] ?? []).filter((act) => isMovable(state, act))
  const centre = state.places[acts[random.below(acts.length)]?.index ?? -1]
  if (!centre) return []
  const distance = (act: Act) => Math.abs((state.places[act.index]?.start ?? centre.start) - centre.start)
  return acts.sort((a, b) => distance(a) - distance(b) || a.index - b.index).slice(0, 2 + random.below(MOST - 4))
}

/** So many of them, in an order that chance gives. */
export const pickSome = (acts: readonly Act[], most: number, random: Random): readonly Act[] => {
  const pool = [...acts]
  const chosen: Act[] = []
  while (chosen.length < most && pool.length > 0) {
    const i = random.below(pool.length)
    const [act] = pool.splice(i, 1)
    if (act) chosen.push(act)
  }
  return chosen
}

/** Whole dishes that share kit, or cooks' time, with one that is hurt or that chance chooses. */
export const rivalDishes: Neighbourhood = (state, random) => {
  const hurt = random.unit() < 0.6 ? somethingHurt(state, random) : undefined
  const all = state.model.deliveries
  const seed = hurt?.delivery ?? all[random.below(all.length)]
  if (!seed) return []
  const most = 2 + random.below(3)
  const own = seed.acts.flatMap((act) => state.places[act.index] ?? [])
  const kits = new Set(own.flatMap((place) => place.kit))
  const score = (dish: (typeof all)[number]) => {
    if (dish === seed) return 1e9
    let sum = 0
    for (const act of dish.acts) {
      const place = state.places[act.index]
      if (!place) {
        sum += 50
        continue
      }
      const shares = place.kit.some((kit) => kits.has(kit))
      for (const mine of own) {
        const near = Math.max(mine.start, place.start) - Math.min(mine.end, place.end)
        sum += (shares ? 3 : 1) / (1 + Math.max(0, near) / 20)
      }
    }
    return sum * (0.3 + random.unit())
  }
  const scored = all.map((dish) => [dish, score(dish)] as const).sort((a, b) => b[1] - a[1])
  const chosen: Act[] = []
  for (const [dish] of scored.slice(0, most)) {
    const acts = dish.acts.filter((act) => isMovable(state, act))
    if (chosen.length > 0 && chosen.length + acts.length > 20) continue
    chosen.push(...acts)
  }
  return chosen
}
