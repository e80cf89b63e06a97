import type { Evening } from '#lib/domain/evening.ts'
import type { Known } from './order-state.ts'
import type { Asked, Told } from './order-worker.ts'

/** Works out on this device what the server works out: the hash of a plan's problem, and without a connection its order. */
export interface LocalOrder {
  /** Only the newest one asked for is answered. Null: this device cannot. */
  readonly hash: (evening: Evening, answer: (hash: string | null) => void) => void
  readonly plan: (evening: Evening, answer: (known: Known | null) => void) => void
  readonly close: () => void
}

/** Without the one the server's word is taken for which order is current, without the other nothing is planned offline. */
const CANNOT: Readonly<Record<Asked['kind'], string>> = {
  hash: 'the running order cannot be checked on this device:',
  plan: 'the evening cannot be planned on this device:',
}

type Hear = (told: Told | null) => void

interface Line {
  readonly worker: Worker
  /** The one under way, and the newest that waits for it. */
  under: { readonly job: number; readonly hear: Hear } | null
  next: { readonly evening: Evening; readonly hear: Hear } | null
}

/**
 * Hashes and plans have a worker each: a plan takes a second, and the next edit does not wait for it. Both are started at
 * once, for without a connection their program cannot be fetched any more.
 */
export const openLocalOrder = (spawn: () => Worker): LocalOrder => {
  let jobs = 0
  const lines = new Map<Asked['kind'], Line>()

  const give = (line: Line, kind: Asked['kind'], evening: Evening, hear: Hear) => {
    jobs += 1
    line.under = { job: jobs, hear }
    line.worker.postMessage({ job: jobs, evening, kind } satisfies Asked)
  }

  const open = (kind: Asked['kind']) => {
    try {
      const line: Line = { worker: spawn(), under: null, next: null }
      line.worker.onmessage = ({ data }: MessageEvent<Told>) => {
        const { under, next } = line
        if (data.job !== under?.job) return
        line.under = null
        line.next = null
        if (next) give(line, kind, next.evening, next.hear)
        else under.hear(data)
      }
      line.worker.onerror = (event) => {
        const newest = line.next ?? line.under
        lines.delete(kind)
        line.worker.terminate()
        console.warn(CANNOT[kind], event.message ?? 'its program could not be loaded')
        newest?.hear(null)
      }
      lines.set(kind, line)
    } catch (why) {
      // A browser without module workers, or one that forbids them.
      console.warn(CANNOT[kind], why)
    }
  }
  open('hash')
  open('plan')

  const ask = (kind: Asked['kind'], evening: Evening, hear: Hear) => {
    const line = lines.get(kind)
    if (!line) hear(null)
    else if (line.under) line.next = { evening, hear }
    else give(line, kind, evening, hear)
  }

  return {
    hash: (evening, answer) => ask('hash', evening, (told) => answer(told?.kind === 'hash' ? told.hash : null)),
    plan: (evening, answer) => ask('plan', evening, (told) => answer(told?.kind === 'plan' ? told.known : null)),
    close() {
      for (const { worker } of lines.values()) worker.terminate()
      lines.clear()
    },
  }
}

export const browserOrder = (): LocalOrder =>
  openLocalOrder(() => new Worker(new URL('./order-worker.ts', import.meta.url), { type: 'module' }))
