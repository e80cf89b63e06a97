import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible'

/** How often something may be tried. Counted in memory: there is one process. */
export interface Limits {
  /** Seconds to wait; 0: go on. Counts the try. */
  try(what: Tried, key: string): Promise<number>
  /** Seconds to wait before the next try; 0: none. Counts nothing. */
  wait(what: Tried, key: string): Promise<number>
  /** The try was a good one after all: it does not count. */
  forgive(what: Tried, key: string): Promise<void>
}

const MINUTES = 60

/** [tries, seconds] */
const ALLOWED = {
  /** Of one address for one e-mail address. */
  'sign-in': [10, 15 * MINUTES],
  /** Of one address for all e-mail addresses. */
  'sign-in-all': [60, 15 * MINUTES],
  'sign-up': [20, 60 * MINUTES],
  'change-password': [10, 15 * MINUTES],
  /** Of one address, for links that open nothing. */
  reply: [20, MINUTES],
  /** By one good link: each may have the database written anew. */
  answer: [60, 60 * MINUTES],
  /** To guests, of one host. */
  letter: [120, 60 * MINUTES],
  /** Of one good address of a calendar: programs ask every few minutes at most. */
  calendar: [60, 60 * MINUTES],
  /** Files of all that is stored of a person. */
  'own-data': [20, 60 * MINUTES],
  /** Pages that one person has fetched for their recipes. */
  'recipe-page': [20, 10 * MINUTES],
} as const

export type Tried = keyof typeof ALLOWED

export const openLimits = (): Limits => {
  const limiters = new Map(
    Object.entries(ALLOWED).map(([what, [points, duration]]) => [
      what,
      new RateLimiterMemory({ keyPrefix: what, points, duration }),
    ]),
  )
  const of = (what: Tried): RateLimiterMemory => {
    const found = limiters.get(what)
    if (!found) throw new Error(`no limit of ${what}`)
    return found
  }
  return {
    try: async (what, key) => {
      try {
        await of(what).consume(key)
        return 0
      } catch (refused) {
        if (refused instanceof RateLimiterRes) return secondsTo(refused)
        throw refused
      }
    },
    wait: async (what, key) => {
      const found = await of(what).get(key)
      return found !== null && found.remainingPoints <= 0 ? secondsTo(found) : 0
    },
    forgive: async (what, key) => {
      await of(what).reward(key)
    },
  }
}

const secondsTo = ({ msBeforeNext }: RateLimiterRes): number => Math.max(1, Math.ceil(msBeforeNext / 1000))
