import type { Evening } from '#lib/domain/evening.ts'
import type { Report, Slice } from './runner.ts'

/** What the thread is asked. `stop` holds one Int32: 1 ends the search with the best so far. */
export interface Asked {
  readonly job: number
  readonly evening: Evening
  readonly kind: Slice['kind']
  readonly stop: SharedArrayBuffer
}

export interface Told {
  readonly job: number
  readonly report: Report
}
