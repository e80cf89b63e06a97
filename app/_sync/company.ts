import type { Awareness } from 'y-protocols/awareness'
import { Shown, type Whereabouts } from '#lib/plan/whereabouts.ts'

/** Who else is at this evening just now, and where. */
export interface Company {
  /** Everybody but this person, one entry a person; the same list until something changes. */
  others(): readonly Shown[]
  /** Says where this person is; null: not looking. */
  stand(where: Whereabouts | null): void
  subscribe(listener: () => void): () => void
}

export interface Crowd extends Company {
  /** Takes part on a connection that has just opened, as that member. */
  join(awareness: Awareness, member: string): void
}

export const openCompany = (): Crowd => {
  const listeners = new Set<() => void>()
  let awareness: Awareness | null = null
  let member = ''
  let where: Whereabouts | null = null
  let others: readonly Shown[] = []

  const look = () => {
    const found = new Map<string, Shown>()
    for (const state of awareness?.getStates().values() ?? []) {
      const shown = Shown.safeParse(state)
      if (shown.success && shown.data.who.member !== member) found.set(shown.data.who.member, shown.data)
    }
    const next = [...found.values()].toSorted((a, b) => (a.who.member < b.who.member ? -1 : 1))
    if (JSON.stringify(next) === JSON.stringify(others)) return
    others = next
    for (const listener of listeners) listener()
  }

  return {
    others: () => others,
    stand(next) {
      if (JSON.stringify(next) === JSON.stringify(where)) return
      where = next
      awareness?.setLocalState(where)
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    join(joined, as) {
      member = as
      // What was known of the others before this connection says nothing of who is there now.
      for (const id of joined.meta.keys()) if (id !== joined.clientID && !joined.states.has(id)) joined.meta.delete(id)
      if (awareness !== joined) {
        awareness = joined
        awareness.on('change', look)
        awareness.setLocalState(where)
      }
      look()
    },
  }
}
