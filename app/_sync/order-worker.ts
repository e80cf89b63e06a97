import { problemHash } from '#lib/order/hash.ts'
import type { Asked, Told } from './local-order.ts'

const hashed = (asked: Asked): string | null => {
  try {
    return problemHash(asked.evening)
  } catch (why) {
    console.error('a plan does not make a problem', why)
    return null
  }
}

self.onmessage = ({ data: asked }: MessageEvent<Asked>) => {
  const told: Told =
    asked.kind === 'hash'
      ? { job: asked.job, kind: 'hash', hash: hashed(asked) }
      : { job: asked.job, kind: 'plan', known: null }
  self.postMessage(told)
}
