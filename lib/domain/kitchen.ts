import { z } from 'zod'
import { At, Celsius, Duration, Id, line } from './atoms.ts'

export const RingSize = z.enum(['small', 'medium', 'large'])
export type RingSize = z.infer<typeof RingSize>
export const Keep = z.enum(['cold', 'frozen'])

/** What can be occupied in a kitchen. A place of a cold kit is a flat tray or a tall pot. */
export const Kit = z.discriminatedUnion('kind', [
  z.strictObject({ id: Id, kind: z.literal('ring'), size: RingSize, count: z.int().min(1).max(8) }),
  z.strictObject({
    id: Id,
    kind: z.literal('oven'),
    name: line(60),
    shelves: z.int().min(1).max(8),
    maxC: Celsius,
    /** °C a minute when heating and when cooling. */
    upPerMin: z.number().min(0.5).max(60).default(8),
    downPerMin: z.number().min(0.5).max(60).default(3),
  }),
  z.strictObject({ id: Id, kind: z.literal('cold'), keep: Keep, places: z.int().min(1).max(60) }),
  z.strictObject({ id: Id, kind: z.literal('worktop'), places: z.int().min(1).max(60) }),
  z.strictObject({ id: Id, kind: z.literal('tool'), tool: line(40).min(1), count: z.int().min(1).max(60) }),
])
export type Kit = z.infer<typeof Kit>

export const Kitchen = z.strictObject({
  id: Id,
  name: line(80),
  /** Carrying time to the host's table; zero for the host's own kitchen. */
  toTable: Duration,
  /** The same on a bad day; the usual time when absent, or when it is shorter. */
  toTableMost: Duration.optional(),
  kit: z.array(Kit).max(60),
})
export type Kitchen = z.infer<typeof Kitchen>

export const Presence = z.strictObject({ kitchen: Id, from: At, to: At })
export type Presence = z.infer<typeof Presence>

/** A stretch in which a cook is at something else, such as bedtime: as if they were not there. */
export const Busy = z.strictObject({ name: line(80), from: At, to: At })
export type Busy = z.infer<typeof Busy>

export const Cook = z.strictObject({
  id: Id,
  name: line(80),
  host: z.boolean(),
  /** Sits at the table with the guests: the minutes missed there are counted. */
  eats: z.boolean(),
  /** Hands-on minutes are multiplied by it. */
  pace: z.number().min(0.6).max(1.6).default(1),
  presence: z.array(Presence).max(40),
  busy: z.array(Busy).max(20).optional(),
  /** Has a glass from when the guests come: hard work is kept from them after it, as far as can be. */
  drinks: z.literal(true).optional(),
})
export type Cook = z.infer<typeof Cook>

/** What a step occupies while it runs. */
export const Use = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('ring'), size: RingSize }),
  z.strictObject({
    kind: z.literal('oven'),
    oven: Id.optional(),
    shelves: z.int().min(1).max(8),
    lowC: Celsius,
    highC: Celsius,
    preheated: z.boolean(),
    /** From the start of the step: nothing else in, out or touched strictly inside it. */
    doorShut: Duration.optional(),
  }),
  z.strictObject({ kind: z.literal('cold'), keep: Keep, places: z.int().min(1).max(60) }),
  z.strictObject({ kind: z.literal('worktop'), places: z.int().min(1).max(60) }),
  z.strictObject({ kind: z.literal('tool'), tool: line(40).min(1), count: z.int().min(1).max(60) }),
])
export type Use = z.infer<typeof Use>
