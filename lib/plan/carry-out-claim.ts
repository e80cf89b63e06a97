import type * as Y from 'yjs'
import { type Asker, type ClaimDecision, decideClaim, type Wish } from './decide-claim.ts'
import { readPlan } from './read.ts'

/** Writes down what was decided. Of the shared plan the server alone does this; anybody may in a copy of their own. */
export const writeDecision = (doc: Y.Doc, decision: ClaimDecision): void => {
  const claims = doc.getMap('claims')
  if (decision.kind === 'set') claims.set(decision.target, decision.claim)
  if (decision.kind === 'clear') claims.delete(decision.target)
}

/** Decides a claim in a copy of the plan as the server would, and carries it out there. */
export const carryOutClaim = (copy: Y.Doc, asker: Asker, wish: Wish): ClaimDecision => {
  const decision = decideClaim(readPlan(copy).evening, asker, wish)
  writeDecision(copy, decision)
  return decision
}
