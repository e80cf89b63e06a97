import type { CatchUp } from '#lib/night/catch-up.ts'
import type { Said } from '#lib/plan/say.ts'

/** When something happened that was not told at the time. */
export type Reply = 'not-yet' | 'planned' | 'now' | 'ago-5' | 'ago-10' | 'ago-20' | 'over'

const PLAIN: readonly Reply[] = ['not-yet', 'planned', 'now', 'ago-5', 'ago-10', 'ago-20']

/** What can be said of it: what should have begun may be over already. */
export const repliesTo = (one: CatchUp): readonly Reply[] => (one.kind === 'begin' ? [...PLAIN, 'over'] : PLAIN)

export const caughtKey = (one: CatchUp): string => `${one.kind} ${'step' in one ? `${one.step} ${one.batch}` : one.course}`

/** The longest that something may have been ago. */
const MOST_AGO = 180

const agoOf = (one: CatchUp, reply: Exclude<Reply, 'not-yet' | 'over'>, nowMs: number): number => {
  if (reply === 'now') return 0
  if (reply === 'planned') return Math.min(MOST_AGO, Math.max(0, Math.round((nowMs - one.due) / 60_000)))
  return Number(reply.slice('ago-'.length))
}

/** What is told for a reply; nothing for what has not happened. */
export const replied = (one: CatchUp, reply: Reply, nowMs: number): readonly Said[] => {
  if (reply === 'not-yet') return []
  if (reply === 'over') return 'step' in one ? [{ kind: 'done', step: one.step }] : []
  const ago = agoOf(one, reply, nowMs)
  switch (one.kind) {
    case 'begin':
      return [{ kind: 'started', step: one.step, ago }]
    case 'end':
      return [{ kind: 'done', step: one.step, ago }]
    case 'to-table':
      return [{ kind: 'to-table', course: one.course, ago }]
    case 'plates-off':
      return [{ kind: 'plates-off', course: one.course, ago }]
  }
}
