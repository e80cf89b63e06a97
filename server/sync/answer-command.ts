import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { writeDecision } from '#lib/plan/carry-out-claim.ts'
import { decideClaim } from '#lib/plan/decide-claim.ts'
import { type Command, Outcome } from '#lib/plan/wire.ts'
import type { Seat } from '#server/live.ts'
import type { StoredOp } from './update-log.ts'

/** What a command comes to. */
export interface Answered {
  readonly outcome: Outcome
  /** What it changed of the plan; null: nothing. */
  readonly bytes: Uint8Array | null
  /** To be stored with it; null: it was asked before, and what it came to is stored or on its way. */
  readonly op: StoredOp | null
}

interface Around {
  /** The plan with what is on its way to the disk. */
  readonly read: () => Evening
  /** Edits it as the server itself; gives what that changed. */
  readonly edit: (change: (doc: Y.Doc) => void) => Uint8Array | null
}

/** Decides commands one after the other; the same one asked again by the same member gets the same answer and does nothing. */
export const openAnswers = (
  stored: readonly StoredOp[],
  { read, edit }: Around,
): ((seat: Seat, command: Command) => Answered) => {
  const ops = new Map<string, StoredOp>(stored.map((op) => [op.op, op]))

  const decide = (seat: Seat, command: Command): Omit<Answered, 'op'> => {
    const { op } = command
    const decision = decideClaim(read(), seat, command)
    if (decision.kind === 'refused') return { outcome: { op, kind: 'refused', why: decision.why }, bytes: null }
    const outcome: Outcome = { op, kind: 'done' }
    if (decision.kind === 'nothing') return { outcome, bytes: null }
    return { outcome, bytes: edit((ahead) => writeDecision(ahead, decision)) }
  }

  return (seat, command) => {
    const known = ops.get(command.op)
    if (known) {
      const outcome: Outcome =
        known.memberId === seat.memberId
          ? Outcome.parse(JSON.parse(known.outcome))
          : { op: command.op, kind: 'refused', why: { kind: 'not-yours' } }
      return { outcome, bytes: null, op: null }
    }
    const { outcome, bytes } = decide(seat, command)
    const op: StoredOp = { op: command.op, memberId: seat.memberId, outcome: JSON.stringify(outcome) }
    ops.set(op.op, op)
    return { outcome, bytes, op }
  }
}
