import type { Report, Runner, Slice } from './runner.ts'
import { STAGES } from './stage.ts'

/** Who is planned for next: earlier stages before later ones, evenings in turn, one slice of an evening at a time. */
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

const urgency = ({ kind }: Slice): number => STAGES.indexOf(kind)

export const openQueue = (runner: Runner, hear: (slice: Slice, report: Report) => void): Queue => {
  // A Map keeps the order of first insertion: a slice that replaces a waiting one keeps its place.
  const lines = STAGES.map(() => new Map<string, Slice>())
  const runs = new Map<string, Run>()
  // One place stays free for first answers, when there is more than one.
  const roomForLater = Math.max(1, runner.room - 1)

  const start = (slice: Slice) => {
    const run: Run = { slice, stop: () => undefined, heard: true }
    runs.set(slice.eveningId, run)
    run.stop = runner.start(slice, (report) => {
      runs.delete(slice.eveningId)
      if (run.heard) hear(slice, report)
      next()
    })
  }

  const hasRoom = (slice: Slice): boolean => {
    const later = [...runs.values()].filter((run) => urgency(run.slice) > 0)
    if (slice.kind === 'proof' && later.some((run) => run.slice.kind === 'proof')) return false
    return runs.size < runner.room && (urgency(slice) === 0 || later.length < roomForLater)
  }

  /** The least urgent slice under way gives way to a more urgent one: it reports what it has. */
  const makeRoomFor = (slice: Slice) => {
    let least: Run | null = null
    for (const run of runs.values())
      if (urgency(run.slice) > urgency(slice) && (!least || urgency(run.slice) > urgency(least.slice))) least = run
    least?.stop()
  }

  const firstOf = (line: Map<string, Slice>): Slice | null => {
    for (const slice of line.values()) if (!runs.has(slice.eveningId)) return slice
    return null
  }

  const next = () => {
    for (const line of lines)
      for (let slice = firstOf(line); slice; slice = firstOf(line)) {
        if (!hasRoom(slice)) return makeRoomFor(slice)
        line.delete(slice.eveningId)
        start(slice)
      }
  }

  const silence = (eveningId: string, unless: string | null) => {
    const run = runs.get(eveningId)
    if (!run || run.slice.hash === unless) return
    run.heard = false
    run.stop()
  }

  const forget = (eveningId: string, but: Map<string, Slice> | null) => {
    for (const line of lines) if (line !== but) line.delete(eveningId)
  }

  return {
    put(slice) {
      silence(slice.eveningId, slice.hash)
      const line = lines[urgency(slice)] ?? null
      forget(slice.eveningId, line)
      line?.set(slice.eveningId, slice)
      next()
    },
    drop(eveningId) {
      forget(eveningId, null)
      silence(eveningId, null)
    },
    of(eveningId) {
      const run = runs.get(eveningId)
      for (const line of lines) {
        const slice = line.get(eveningId)
        if (slice) return slice
      }
      return run?.heard ? run.slice : null
    },
  }
}
