import * as z from 'zod/mini'
import { Celsius, Id, Instant, Word } from '#lib/domain/atoms.ts'

/** A random operation id: the same one twice is done once. */
export const Op = z.string().check(z.regex(/^[A-Za-z0-9-]{8,64}$/))

/** So many minutes ago, for what is told late. */
const ago = z.optional(z.int().check(z.gte(0), z.lte(180)))

/** What can be told on the night. */
export const Said = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('begin') }),
  z.strictObject({ kind: z.literal('close') }),
  z.strictObject({ kind: z.literal('started'), step: Id, ago }),
  z.strictObject({ kind: z.literal('done'), step: Id, ago }),
  /** Minutes more than planned, or less than was told before. */
  z.strictObject({
    kind: z.literal('longer'),
    step: Id,
    minutes: z.int().check(
      z.gte(-60),
      z.lte(60),
      z.refine((minutes) => minutes !== 0),
    ),
  }),
  z.strictObject({ kind: z.literal('reading'), step: Id, coreC: Celsius }),
  z.strictObject({ kind: z.literal('to-table'), course: Id, ago }),
  z.strictObject({ kind: z.literal('nearly'), course: Id }),
  z.strictObject({ kind: z.literal('plates-off'), course: Id, ago }),
  /** null: when the plan says. */
  z.strictObject({ kind: z.literal('sit-down'), to: z.nullable(Instant) }),
  z.strictObject({ kind: z.literal('gone'), cook: Id }),
  z.strictObject({ kind: z.literal('back'), cook: Id }),
  z.strictObject({ kind: z.literal('out'), dish: Id, why: z.enum(['failed', 'dropped']), instead: z.optional(Id) }),
  /** Nobody with the need may be served the dish; null: nobody at all. */
  z.strictObject({ kind: z.literal('alarm'), alarm: Id, dish: Id, need: z.nullable(Word) }),
  z.strictObject({ kind: z.literal('confirm'), alarm: Id, cook: Id }),
])
export type Said = z.infer<typeof Said>

/** The same, or the taking back of what one has told oneself just before. */
export const Say = z.discriminatedUnion('kind', [
  ...Said.def.options,
  z.strictObject({ kind: z.literal('take-back'), of: Op, said: Said }),
])
export type Say = z.infer<typeof Say>
