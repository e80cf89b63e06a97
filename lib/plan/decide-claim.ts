import type { Evening } from '#lib/domain/evening.ts'
import type { ClaimEntry } from './layout.ts'
import type { ClaimCommand, CommandRefusal } from './wire.ts'

type WithoutOp<T> = T extends unknown ? Omit<T, 'op'> : never
/** What is asked for about a claim; a command is one with an operation id. */
export type Wish = WithoutOp<ClaimCommand>

/** What a command about a claim comes to, seen from the plan as it stands. */
export type ClaimDecision =
  | { readonly kind: 'set'; readonly target: string; readonly claim: ClaimEntry }
  | { readonly kind: 'clear'; readonly target: string }
  /** It is so already. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly why: CommandRefusal }

export interface Asker {
  readonly role: 'host' | 'cook'
  readonly cook: string | null
}

/** With the first: as many as ever stand at one step. */
const MOST_ALSO = 2

/**
 * Compare and set: the first to claim a free target has it, and the next one is told who. A cook speaks for themself, a
 * host for everybody; who has it may let others in and out too. A step, its dish and its course are three targets: which claim counts for a step is decided on reading.
 */
export const decideClaim = (evening: Evening, asker: Asker, command: Wish): ClaimDecision => {
  const { target, cook } = command
  const known = (id: string) => evening.cooks.some((one) => one.id === id)
  const targets = [evening.steps, evening.dishes, evening.courses]
  if (!targets.some((list) => list.some((one) => one.id === target))) return refused({ kind: 'unknown-target' })
  if (!known(cook)) return refused({ kind: 'unknown-cook' })
  const speaksFor = (id: string) => asker.role === 'host' || asker.cook === id
  const held = evening.claims.find((claim) => claim.target === target)

  switch (command.kind) {
    case 'claim': {
      const also = [...new Set(command.also ?? [])].filter((one) => one !== cook)
      if (!also.every(known)) return refused({ kind: 'unknown-cook' })
      if (!speaksFor(cook)) return refused({ kind: 'not-yours' })
      if (held && held.cook !== cook) return refused({ kind: 'taken', by: held.cook })
      const isSo = held !== undefined && JSON.stringify(held.also ?? []) === JSON.stringify(also)
      return isSo ? { kind: 'nothing' } : set(target, cook, also)
    }
    case 'release':
      if (!speaksFor(cook)) return refused({ kind: 'not-yours' })
      if (!held) return { kind: 'nothing' }
      return held.cook === cook ? { kind: 'clear', target } : refused({ kind: 'taken', by: held.cook })
    case 'reassign':
      if (!speaksFor(command.from)) return refused({ kind: 'not-yours' })
      if (held && held.cook === cook) return { kind: 'nothing' }
      if (held && held.cook !== command.from) return refused({ kind: 'taken', by: held.cook })
      return set(target, cook, held?.also ?? [])
    case 'join': {
      if (!speaksFor(cook) && !(held && speaksFor(held.cook))) return refused({ kind: 'not-yours' })
      if (!held) return set(target, cook, [])
      const also = held.also ?? []
      if (held.cook === cook || also.includes(cook)) return { kind: 'nothing' }
      return also.length < MOST_ALSO ? set(target, held.cook, [...also, cook]) : refused({ kind: 'full' })
    }
    case 'leave': {
      if (!speaksFor(cook) && !(held && speaksFor(held.cook))) return refused({ kind: 'not-yours' })
      const [first, ...others] = held ? [held.cook, ...(held.also ?? [])].filter((one) => one !== cook) : []
      if (!held || ![held.cook, ...(held.also ?? [])].includes(cook)) return { kind: 'nothing' }
      return first === undefined ? { kind: 'clear', target } : set(target, first, others)
    }
  }
}

const set = (target: string, cook: string, also: readonly string[]): ClaimDecision => {
  const others = also.filter((one) => one !== cook)
  return { kind: 'set', target, claim: others.length > 0 ? { cook, also: others } : { cook } }
}

const refused = (why: CommandRefusal): ClaimDecision => ({ kind: 'refused', why })
