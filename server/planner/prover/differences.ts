/** Stands for moment 0 among the variables. */
export const ORIGIN = -1

/** What is known of differences of variables: to − from ≥ least, and what follows from all of it. */
export interface Differences {
  readonly add: (from: number, to: number, least: number) => void
  readonly knows: (variable: number) => boolean
  /** The least that to − from can be, as far as known when closed; −∞ when nothing is. */
  readonly least: (from: number, to: number) => number
  /** Longest paths between all pairs (Floyd 1962, "Algorithm 97: shortest path", CACM 5:345). */
  readonly close: () => void
}

export const newDifferences = (): Differences => {
  const places = new Map<number, number>([[ORIGIN, 0]])
  const said: [from: number, to: number, least: number][] = []
  let closed = new Float64Array(0)
  let width = 0
  const placeOf = (variable: number): number => {
    const place = places.get(variable) ?? places.size
    places.set(variable, place)
    return place
  }
  return {
    add: (from, to, least) => said.push([placeOf(from), placeOf(to), least]),
    knows: (variable) => places.has(variable),
    least: (from, to) => {
      const [a, b] = [places.get(from), places.get(to)]
      if (a === undefined || b === undefined || a >= width || b >= width) return Number.NEGATIVE_INFINITY
      return closed[a * width + b] ?? Number.NEGATIVE_INFINITY
    },
    close: () => {
      width = places.size
      closed = new Float64Array(width * width).fill(Number.NEGATIVE_INFINITY)
      for (let i = 0; i < width; i++) closed[i * width + i] = 0
      for (const [from, to, least] of said) closed[from * width + to] = Math.max(closed[from * width + to] ?? 0, least)
      for (let k = 0; k < width; k++)
        for (let i = 0; i < width; i++) {
          const first = closed[i * width + k] ?? 0
          if (first === Number.NEGATIVE_INFINITY) continue
          for (let j = 0; j < width; j++) {
            const path = first + (closed[k * width + j] ?? 0)
            if (path > (closed[i * width + j] ?? 0)) closed[i * width + j] = path
          }
        }
    },
  }
}
