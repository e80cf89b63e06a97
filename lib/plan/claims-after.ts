import type { Evening } from '#lib/domain/evening.ts'
import type { Claim } from '#lib/domain/people.ts'
import { type Asker, decideClaim, type Wish } from './decide-claim.ts'

/** An evening's claims as they would stand if these wishes were granted, one after the other; refused ones change nothing. */
export const claimsAfter = (evening: Evening, asker: Asker, wishes: readonly Wish[]): readonly Claim[] => {
  let { claims } = evening
  for (const wish of wishes) {
    const decision = decideClaim({ ...evening, claims }, asker, wish)
    if (decision.kind !== 'set' && decision.kind !== 'clear') continue
    claims = claims.filter(({ target }) => target !== decision.target)
    if (decision.kind === 'set') claims.push({ target: decision.target, ...decision.claim })
  }
  return claims
}
