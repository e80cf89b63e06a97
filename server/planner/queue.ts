import type { Report, Runner, Slice } from './runner.ts'

/** Who is planned for next: first answers before better ones, evenings in turn, one slice of an evening at a time. */
export interface Queue {
  /** Takes the place in line of this evening's older slice; one of another problem that is under way is stopped and not heard. */
  put(slice: Slice): void
  /** Takes this evening out of the line; what is under way is stopped and not heard. */
  drop(eveningId: string): void
  /** The slice of this evening that waits or is under way. */
  of(eveningId: string): Slice | null
}

interface Run {
  readonly slice: Slice
  stop: () => void
  heard: boolean
}

export const openQueue = (runner: Runner, hear: (slice: Slice, report: Report) => void): Queue => {
  // A Map keeps the order of first insertion: a slice that replaces a waiting one keeps its place.
  const quick = new Map<string, Slice>()
  const better = new Map<string, Slice>()
  const runs = new Map<string, Run>()
  const isBetter = (run: Run) => run.slice.kind === 'better'
  // One place stays free for first answers, when there is more than one.
  const roomForBetter = Math.max(1, runner.room - 1)

  const start = (slice: Slice) => {
    const run: Run = { slice, stop: () => undefined, heard: true }
    runs.set(slice.eveningId, run)
    run.stop = runner.start(slice, (report) => {
      runs.delete(slice.eveningId)
      if (run.heard) hear(slice, report)
      next()
    })
  }

  const firstOf = (line: Map<string, Slice>): Slice | null => {
    for (const slice of line.values()) if (!runs.has(slice.eveningId)) return slice
    return null
  }

  const next = () => {
    for (let slice = firstOf(quick); slice; slice = firstOf(quick)) {
      if (runs.size >= runner.room) {
        for (const run of runs.values()) if (isBetter(run)) return run.stop()
        return
      }
      quick.delete(slice.eveningId)
      start(slice)
    }
    for (let slice = firstOf(better); slice; slice = firstOf(better)) {
      if (runs.size >= runner.room || [...runs.values()].filter(isBetter).length >= roomForBetter) return
      better.delete(slice.eveningId)
      start(slice)
    }
  }

  const silence = (eveningId: string, unless: string | null) => {
    const run = runs.get(eveningId)
    if (!run || run.slice.hash === unless) return
    run.heard = false
    run.stop()
  }

  return {
    put(slice) {
      silence(slice.eveningId, slice.hash)
      ;(slice.kind === 'quick' ? better : quick).delete(slice.eveningId)
      ;(slice.kind === 'quick' ? quick : better).set(slice.eveningId, slice)
      next()
    },
    drop(eveningId) {
      quick.delete(eveningId)
      better.delete(eveningId)
      silence(eveningId, null)
    },
    of(eveningId) {
      const run = runs.get(eveningId)
      return quick.get(eveningId) ?? better.get(eveningId) ?? (run?.heard ? run.slice : null)
    },
  }
}
