import type { Dish } from '#lib/domain/menu.ts'
import { type NightFact, nightKey } from '#lib/domain/people.ts'
import type { CommandRefusal } from './wire.ts'

/** One thing that changes in the plan: a fact of the night, which is there or is not, or whether a dish is on. */
export type Write =
  | { readonly root: 'night'; readonly key: string; readonly fact: NightFact | null }
  | { readonly root: 'dish'; readonly dish: string; readonly state: Dish['state'] }

/** What a word of the night comes to. */
export type TellDecision =
  /** `told`: the moment that is written; `was`: what stood there before, where taking it back needs to know. */
  | { readonly kind: 'write'; readonly writes: readonly Write[]; readonly told: string; readonly was?: string }
  /** It is so already. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly why: CommandRefusal }

export const nothing: TellDecision = { kind: 'nothing' }

type Plain = 'unknown-target' | 'unknown-cook' | 'no-seat' | 'not-tonight' | 'too-long' | 'too-late' | 'stays'

export const refused = (kind: Plain): TellDecision & { readonly kind: 'refused' } => ({ kind: 'refused', why: { kind } })

interface More {
  readonly was?: string
  /** Of the fact that goes; needed where it is null. */
  readonly key?: string
  /** What changes with it. */
  readonly also?: readonly Write[]
}

export const factWrite = (fact: NightFact): Write => ({ root: 'night', key: nightKey(fact), fact })

/** Writes a fact in place of the one about the same thing; null takes it away. */
export const wrote = (told: string, fact: NightFact | null, { was, key, also = [] }: More = {}): TellDecision => ({
  kind: 'write',
  writes: [{ root: 'night', key: fact ? nightKey(fact) : (key ?? ''), fact }, ...also],
  told,
  ...(was === undefined ? {} : { was }),
})
