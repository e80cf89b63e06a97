import { fail, ok, type Result } from '#lib/domain/result.ts'
import { type Missing, missingOf, withoutWithdrawn } from '#lib/potluck/missing.ts'
import { allNeeds, needsFor } from '#server/guests/needs.ts'
import { live } from '#server/live.ts'
import { gapsOf } from './gaps.ts'

/** What is missing for needs, worked out: whose they are, and needs for which nothing is missing, stay on the server. */
export type MissingByNeed = readonly Extract<Missing, { kind: 'need' | 'needs-unknown' }>[]

/** For everybody with a seat; to others it is as if there were no such evening. */
export const missingByNeed = async (userId: string, eveningId: string): Promise<Result<MissingByNeed, 'not-found'>> => {
  const known = await needsFor(userId, eveningId)
  if (!known.ok) return fail('not-found')
  const evening = await live().rooms.read(eveningId)
  const { needs, unknown } = await allNeeds(eveningId)
  const missing = missingOf(evening, { gaps: gapsOf(withoutWithdrawn(evening), needs), unknown, iceGrams: 0 })
  return ok(
    missing.flatMap((each) =>
      each.kind === 'need' || (each.kind === 'needs-unknown' && known.value.scope !== 'none') ? [each] : [],
    ),
  )
}
