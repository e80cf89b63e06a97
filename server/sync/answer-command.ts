import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { writeDecision } from '#lib/plan/carry-out-claim.ts'
import { writeTold } from '#lib/plan/carry-out-tell.ts'
import { decideClaim } from '#lib/plan/decide-claim.ts'
import { decideTell, type Earlier } from '#lib/plan/decide-tell.ts'
import { toldAt } from '#lib/plan/may-tell.ts'
import { type ClaimCommand, Outcome, type Sent, type TellCommand } from '#lib/plan/wire.ts'
import type { Seat } from '#server/live.ts'
import type { Place } from './touched.ts'
import type { StoredOp } from './update-log.ts'

/** What a command comes to. */
export interface Answered {
  readonly outcome: Outcome
  /** What it changed of the plan; null: nothing. */
  readonly bytes: Uint8Array | null
  /** Where it changed something. */
  readonly places: readonly Place[]
  /** To be stored with it; null: it was asked before, and what it came to is stored or on its way. */
  readonly op: StoredOp | null
}

/** What an edit of the server's own came to. */
export interface Edited {
  /** null: nothing. */
  readonly bytes: Uint8Array | null
  readonly places: readonly Place[]
}

interface Around {
  /** The plan with what is on its way to the disk. */
  readonly read: () => Evening
  /** Edits it as the server itself. */
  readonly edit: (change: (doc: Y.Doc) => void) => Edited
  readonly now: () => number
}

const NOTHING: Edited = { bytes: null, places: [] }

/** Decides commands one after the other; the same one asked again by the same member gets the same answer and does nothing. */
export const openAnswers = (stored: readonly StoredOp[], { read, edit, now }: Around): ((seat: Seat, sent: Sent) => Answered) => {
  const ops = new Map<string, StoredOp>(stored.map((op) => [op.op, op]))

  const answerClaim = (seat: Seat, command: ClaimCommand): Omit<Answered, 'op'> => {
    const { op } = command
    const decision = decideClaim(read(), seat, command)
    if (decision.kind === 'refused') return { outcome: { op, kind: 'refused', why: decision.why }, ...NOTHING }
    const outcome: Outcome = { op, kind: 'done' }
    if (decision.kind === 'nothing') return { outcome, ...NOTHING }
    return { outcome, ...edit((ahead) => writeDecision(ahead, decision)) }
  }

  const answerTell = (seat: Seat, command: TellCommand, sent: number | null): Omit<Answered, 'op'> => {
    const { op } = command
    const earlier: Earlier = (before) => {
      const known = ops.get(before)
      const outcome = known?.memberId === seat.memberId ? outcomeOf(known) : null
      return outcome?.kind === 'done' && outcome.told !== undefined ? { told: outcome.told, was: outcome.was } : null
    }
    const decision = decideTell(read(), seat, command, toldAt(command.at, sent, now()), earlier)
    if (decision.kind === 'refused') return { outcome: { op, kind: 'refused', why: decision.why }, ...NOTHING }
    if (decision.kind === 'nothing') return { outcome: { op, kind: 'done' }, ...NOTHING }
    const { told, was, writes } = decision
    const outcome: Outcome = { op, kind: 'done', told, ...(was === undefined ? {} : { was }) }
    return { outcome, ...edit((ahead) => writeTold(ahead, writes)) }
  }

  return (seat, { command, sent }) => {
    const known = ops.get(command.op)
    if (known) {
      const outcome: Outcome =
        known.memberId === seat.memberId ? outcomeOf(known) : { op: command.op, kind: 'refused', why: { kind: 'not-yours' } }
      return { outcome, ...NOTHING, op: null }
    }
    const { outcome, bytes, places } = command.kind === 'tell' ? answerTell(seat, command, sent) : answerClaim(seat, command)
    const op: StoredOp = { op: command.op, memberId: seat.memberId, outcome: JSON.stringify(outcome) }
    ops.set(op.op, op)
    return { outcome, bytes, places, op }
  }
}

const outcomeOf = (stored: StoredOp): Outcome => Outcome.parse(JSON.parse(stored.outcome))
