import type { Circle, Project } from './project.ts'

/** No lag, direct or through others. */
export const NO_LAG = -(2 ** 29)

/** The greatest lag from start i to start j through any chain, at i × n + j (Floyd 1962, Warshall 1962), or a circle. */
export type Closure =
  | { readonly kind: 'closed'; readonly longest: Int32Array }
  | { readonly kind: 'circle'; readonly circle: Circle }

export const closure = ({ lengths, lags }: Project): Closure => {
  const count = lengths.length
  const longest = new Int32Array(count * count).fill(NO_LAG)
  const next = new Int32Array(count * count).fill(-1)
  for (let i = 0; i < count; i++) longest[i * count + i] = 0
  for (const { from, to, least } of lags) {
    if (from === to && least > 0) return { kind: 'circle', circle: [from] }
    if (least <= (longest[from * count + to] as number)) continue
    longest[from * count + to] = least
    next[from * count + to] = to
  }
  for (let via = 0; via < count; via++)
    for (let i = 0; i < count; i++) {
      const first = longest[i * count + via] as number
      if (first === NO_LAG) continue
      for (let j = 0; j < count; j++) {
        const second = longest[via * count + j] as number
        if (second === NO_LAG || first + second <= (longest[i * count + j] as number)) continue
        longest[i * count + j] = first + second
        next[i * count + j] = next[i * count + via] as number
        if (i === j) return { kind: 'circle', circle: circleFrom(next, count, i) }
      }
    }
  return { kind: 'closed', longest }
}

const circleFrom = (next: Int32Array, count: number, start: number): Circle => {
  const circle = [start]
  for (let at = next[start * count + start] as number; at !== start; at = next[at * count + start] as number) circle.push(at)
  return circle
}

/** Adds one lag to a closure. False when it makes a circle. */
export const addLag = (longest: Int32Array, count: number, from: number, to: number, least: number): boolean => {
  if (least <= (longest[from * count + to] as number)) return true
  const back = longest[to * count + from] as number
  if (back !== NO_LAG && back + least > 0) return false
  for (let a = 0; a < count; a++) {
    const first = longest[a * count + from] as number
    if (first === NO_LAG) continue
    for (let b = 0; b < count; b++) {
      const second = longest[to * count + b] as number
      if (second !== NO_LAG && first + least + second > (longest[a * count + b] as number))
        longest[a * count + b] = first + least + second
    }
  }
  return true
}
