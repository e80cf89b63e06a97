import * as z from 'zod/mini'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import { Care, type Step, StepRole, type Way } from '#lib/domain/menu.ts'

/** The one piece of kit by which a step is likest others: the oven before the ring, the ring before the fridge, then tools. */
const KitClass = z.enum(['oven', 'ring', 'cold', 'tool', 'none'])
export type KitClass = z.infer<typeof KitClass>

/** What makes two steps alike: what they are for, how they are minded, and with what. Also as it is read back from where it was kept. */
export const Kind = z.object({ role: StepRole, care: Care, kit: KitClass })
export type Kind = Readonly<z.infer<typeof Kind>>

/** What one step took on one night, at a pace of one: minutes, for one batch. Names are keys (see keyOf), so they hold from evening to evening. */
export interface Observation extends Kind {
  readonly evening: string
  /** yyyy-mm-dd */
  readonly date: string
  readonly dish: string
  readonly does: string
  /** Whose hands they were, where it was one person and known by a seat. */
  readonly cook: string | null
  readonly kitchen: string
  /** What the plan said then, and what it was. */
  readonly written: number
  readonly took: number
  /** How hot the oven was to be; null without one. */
  readonly heatC: number | null
  /** A sign or a thermometer ended it, not the clock. */
  readonly byDoneness: boolean
}

/** A name as it is compared from evening to evening: spaces and capitals say nothing. */
export const keyOf = (name: string): string => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase()

/** The kit class of a way. */
export const kitOf = (way: Pick<Way, 'uses'>): KitClass => {
  const has = (kind: string) => way.uses.some((use) => use.kind === kind)
  return (['oven', 'ring', 'cold', 'tool'] as const).find(has) ?? 'none'
}

/** The kind of a step done in one of its ways. */
export const kindOf = (step: Pick<Step, 'role'>, way: Way): Kind => ({ role: step.role, care: way.care, kit: kitOf(way) })

/** A kitchen as it is known from evening to evening. */
export const kitchenKey = (kitchen: Pick<Kitchen, 'name'>): string => keyOf(kitchen.name)
