import { insert, type Wish } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act } from './model.ts'
import { isMovable } from './movable.ts'
import type { Random } from './random.ts'
import { type State, take } from './state.ts'

/**
 * As `insert`. What has no room on the road because something else leaves with the same cook at another moment is placed first, and
 * what leaves with it after it, the longest way first.
 */
export const insertTrip = (state: State, act: Act, random: Random, wish: Wish): boolean => {
  if (insert(state, act, random, wish)) return true
  const mates = act.road ? matesOf(state, act) : []
  if (mates.length === 0) return false
  for (const mate of mates) {
    take(state, mate)
    if (mate.delivery) refreshKeep(state, mate.delivery)
  }
  const found = insert(state, act, random, wish)
  for (const mate of mates) insert(state, mate, random, { blink: 0 })
  return found
}

/** What is carried in a hole in which it could be carried too, by one of those who could. */
const matesOf = (state: State, act: Act): Act[] =>
  state.model.acts
    .filter((other) => {
      const place = other !== act && other.road ? state.places[other.index] : undefined
      if (!place || !isMovable(state, other)) return false
      return place.team.some(
        (cook) =>
          act.modes.some(({ teams }) => teams.some(({ cooks }) => cooks.includes(cook))) &&
          (act.stays[cook.index] ?? []).some((hole) => hole.from <= place.start && place.end <= hole.to),
      )
    })
    .sort((a, b) => b.minLen - a.minLen || a.index - b.index)
