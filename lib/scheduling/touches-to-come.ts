import type { Mode, Tick } from './problem.ts'

/** Where a touch's `at` may be: [lo, hi], both inside. */
export interface TouchWindow {
  readonly touch: number
  readonly lo: Tick
  readonly hi: Tick
  readonly takes: number
}

/** The touches of something under way that are still to come: not those that were due before now. */
export const touchesToCome = (mode: Pick<Mode, 'touches'>, start: Tick, end: Tick, now: Tick | undefined): TouchWindow[] => {
  const from = now ?? start
  return mode.touches.flatMap(({ when, takes, lateBy }, touch): TouchWindow[] => {
    if (when === 'in') return []
    if (when === 'out') {
      const at = end - takes
      return [{ touch, lo: Math.max(at, from), hi: Math.max(at + lateBy, from), takes }]
    }
    const windows: TouchWindow[] = []
    for (let at = start + when.every; when.every > 0 && at < end; at += when.every)
      if (at >= from) windows.push({ touch, lo: at, hi: at + lateBy, takes })
    return windows
  })
}
