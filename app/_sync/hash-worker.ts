import type { Evening } from '#lib/domain/evening.ts'
import { problemHash } from '#lib/order/hash.ts'

/** What the worker is asked, and what it answers: null where the plan does not make a problem. */
export interface HashAsked {
  readonly kind: 'hash'
  readonly job: number
  readonly evening: Evening
}
export interface HashTold {
  readonly kind: 'hash'
  readonly job: number
  readonly hash: string | null
}

const hashed = (evening: Evening): string | null => {
  try {
    return problemHash(evening)
  } catch (why) {
    console.error('a plan does not make a problem', why)
    return null
  }
}

self.onmessage = ({ data: { job, evening } }: MessageEvent<HashAsked>) => {
  self.postMessage({ job, kind: 'hash', hash: hashed(evening) } satisfies HashTold)
}
