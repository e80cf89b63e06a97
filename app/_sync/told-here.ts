import type { Evening } from '#lib/domain/evening.ts'
import { afterWrites } from '#lib/plan/carry-out-tell.ts'
import type { Asker } from '#lib/plan/decide-claim.ts'
import { decideTell } from '#lib/plan/decide-tell.ts'
import { stepOf } from '#lib/plan/night-facts.ts'
import type { Outcome, TellCommand } from '#lib/plan/wire.ts'

interface Known {
  readonly told: string
  readonly was?: string | undefined
}

interface Laid {
  readonly shown: Evening
  /** What each word came to, by its operation. */
  readonly written: ReadonlyMap<string, Known>
}

/** What this device has told and the server has not answered yet, laid over the plan as the server will write it. */
export interface ToldHere {
  /** The same evening as before when neither the plan nor what is told has changed. */
  readonly over: (evening: Evening, asker: Asker | null) => Evening
  /** As `over`, of a copy that is only tried. */
  readonly overCopy: (evening: Evening, asker: Asker | null) => Evening
  /** The server has decided: what it wrote is needed to see what a taking back will come to. */
  readonly hear: (outcome: Outcome) => void
}

/** Nothing is taken back that was told so many words ago. */
const REMEMBERED = 100

/** `waiting`: in the order in which it was told; `offset`: how far the server's clock is ahead of this device's, in ms. */
export const openToldHere = (waiting: () => readonly TellCommand[], offset: () => number): ToldHere => {
  const moments = new Map<string, number>()
  const extras = new Map<string, string | undefined>()
  const answered = new Map<string, Known>()
  let last: {
    readonly evening: Evening
    readonly who: string
    readonly tells: readonly TellCommand[]
    readonly laid: Laid
  } | null = null

  /** Fixed when it is first needed: what is known of the server's clock changes by some milliseconds with every beat. */
  const momentOf = ({ op, at }: TellCommand): number => {
    const known = moments.get(op) ?? at + offset()
    moments.set(op, known)
    return known
  }

  /** Minutes add up: those that are in the plan already, and only not answered, are not added once more. */
  const isIn = (shown: Evening, { op, say }: TellCommand): boolean =>
    say.kind === 'longer' && extras.has(op) && stepOf(shown, say.step)?.extra === extras.get(op)

  const lay = (under: Laid, asker: Asker, tells: readonly TellCommand[]): Laid => {
    const written = new Map(under.written)
    let { shown } = under
    for (const tell of tells) {
      if (isIn(shown, tell)) continue
      const decision = decideTell(shown, asker, tell, momentOf(tell), (op) => written.get(op) ?? answered.get(op) ?? null)
      if (decision.kind !== 'write') continue
      written.set(tell.op, decision)
      shown = afterWrites(shown, decision.writes)
      if (tell.say.kind === 'longer') extras.set(tell.op, stepOf(shown, tell.say.step)?.extra)
    }
    return { shown, written }
  }
  const bare = (evening: Evening): Laid => ({ shown: evening, written: new Map() })

  return {
    over(evening, asker) {
      const tells = waiting()
      if (tells.length === 0 || !asker) return evening
      const who = `${asker.role} ${asker.cook}`
      // One more word on top of the others is laid on what they came to.
      const isMore = last?.evening === evening && last.who === who && last.tells.every((tell, at) => tells[at]?.op === tell.op)
      const laid = isMore && last ? lay(last.laid, asker, tells.slice(last.tells.length)) : lay(bare(evening), asker, tells)
      last = { evening, who, tells, laid }
      return laid.shown
    },
    overCopy: (evening, asker) => (asker ? lay(bare(evening), asker, waiting()).shown : evening),
    hear(outcome) {
      moments.delete(outcome.op)
      extras.delete(outcome.op)
      if (outcome.kind !== 'done' || outcome.told === undefined) return
      answered.set(outcome.op, { told: outcome.told, was: outcome.was })
      for (const op of [...answered.keys()].slice(0, -REMEMBERED)) answered.delete(op)
    },
  }
}
