import type { Project } from './project.ts'

/** One store: what surely runs at each time, and what that leaves for the others. */
export interface TimeTable {
  readonly capacity: number
  /** For each variable in ticks. */
  readonly needs: Int32Array
  /** Those that need it, the greedy ones first. */
  readonly users: Int32Array
  /** The same, kept more or less in the order in which their sure parts begin, and end. */
  readonly byBegin: Int32Array
  readonly byEnd: Int32Array
  /** Stretches of constant use: from here, as much, to the next one's. */
  readonly from: Int32Array
  readonly use: Int32Array
}

/** Stores that some three or more can be short of; where no two of the users may run together, the choices say it all. */
export const timeTables = ({ lengths, stores }: Project, together: Uint8Array): TimeTable[] => {
  const count = lengths.length
  return stores.flatMap(({ capacity, needs }) => {
    const users = [...needs.keys()].filter((i) => (needs[i] as number) > 0 && (lengths[i] as number) > 0)
    const sum = users.reduce((total, i) => total + (needs[i] as number), 0)
    const shared = users.some((i) => users.some((j) => i < j && together[i * count + j] === 1))
    if (sum <= capacity || !shared) return []
    users.sort((a, b) => (needs[b] as number) - (needs[a] as number))
    return [
      {
        capacity,
        needs: Int32Array.from([...needs, 0]),
        users: Int32Array.from(users),
        byBegin: Int32Array.from(users),
        byEnd: Int32Array.from(users),
        from: new Int32Array(2 * users.length + 2),
        use: new Int32Array(2 * users.length + 2),
      },
    ]
  })
}
