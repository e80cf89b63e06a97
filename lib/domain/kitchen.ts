import * as z from 'zod/mini'
import { At, Celsius, Duration, Id, line } from './atoms.ts'

export const RingSize = z.enum(['small', 'medium', 'large'])
export type RingSize = z.infer<typeof RingSize>
export const Keep = z.enum(['cold', 'frozen'])

/** What can be occupied in a kitchen. A place of a cold kit is a flat tray or a tall pot. */
export const Kit = z.discriminatedUnion('kind', [
  z.strictObject({ id: Id, kind: z.literal('ring'), size: RingSize, count: z.int().check(z.gte(1), z.lte(8)) }),
  z.strictObject({
    id: Id,
    kind: z.literal('oven'),
    name: line(60),
    shelves: z.int().check(z.gte(1), z.lte(8)),
    maxC: Celsius,
    /** °C a minute when heating and when cooling. */
    upPerMin: z._default(z.number().check(z.gte(0.5), z.lte(60)), 8),
    downPerMin: z._default(z.number().check(z.gte(0.5), z.lte(60)), 3),
  }),
  z.strictObject({ id: Id, kind: z.literal('cold'), keep: Keep, places: z.int().check(z.gte(1), z.lte(60)) }),
  z.strictObject({ id: Id, kind: z.literal('worktop'), places: z.int().check(z.gte(1), z.lte(60)) }),
  z.strictObject({
    id: Id,
    kind: z.literal('tool'),
    tool: line(40).check(z.minLength(1)),
    count: z.int().check(z.gte(1), z.lte(60)),
  }),
])
export type Kit = z.infer<typeof Kit>

export const Kitchen = z.strictObject({
  id: Id,
  name: line(80),
  /** Carrying time to the host's table; zero for the host's own kitchen. */
  toTable: Duration,
  /** The same on a bad day; the usual time when absent, or when it is shorter. */
  toTableMost: z.optional(Duration),
  kit: z.array(Kit).check(z.maxLength(60)),
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
  pace: z._default(z.number().check(z.gte(0.6), z.lte(1.6)), 1),
  presence: z.array(Presence).check(z.maxLength(40)),
  busy: z.optional(z.array(Busy).check(z.maxLength(20))),
  /** Has a glass from when the guests come: hard work is kept from them after it, as far as can be. */
  drinks: z.optional(z.literal(true)),
})
export type Cook = z.infer<typeof Cook>

/** What a step occupies while it runs. */
export const Use = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('ring'), size: RingSize }),
  z.strictObject({
    kind: z.literal('oven'),
    oven: z.optional(Id),
    shelves: z.int().check(z.gte(1), z.lte(8)),
    lowC: Celsius,
    highC: Celsius,
    preheated: z.boolean(),
    /** From the start of the step: nothing else in, out or touched strictly inside it. */
    doorShut: z.optional(Duration),
  }),
  z.strictObject({ kind: z.literal('cold'), keep: Keep, places: z.int().check(z.gte(1), z.lte(60)) }),
  z.strictObject({ kind: z.literal('worktop'), places: z.int().check(z.gte(1), z.lte(60)) }),
  z.strictObject({ kind: z.literal('tool'), tool: line(40).check(z.minLength(1)), count: z.int().check(z.gte(1), z.lte(60)) }),
])
export type Use = z.infer<typeof Use>
