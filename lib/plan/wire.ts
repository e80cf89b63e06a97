import * as z from 'zod/mini'
import { Id, Instant } from '#lib/domain/atoms.ts'
import { ORDER_FORMAT, type RunningOrder } from '#lib/domain/running-order.ts'
import { Op as op, Say } from './say.ts'

/**
 * Message types of our own on the y-websocket connection (0-3 are the library's). Each frame is varUint(type), then one
 * JSON string, but for `ack`, which is varUint(frames).
 */
export const WIRE = {
  /** server → client, first of all: who you are here, which document this is. */
  hello: 10,
  /** server → client: so many of this connection's document frames are stored, in order. */
  ack: 11,
  /** client → server: a command with an operation id, repeatable. */
  command: 12,
  /** server → client: what became of it. */
  outcome: 13,
  /** server → client: the running order, or that one is being planned. */
  order: 14,
  /** both ways, every 5 s: the server's clock. */
  beat: 15,
  /** server → hosts: something about the guests is new. What it is never comes this way. */
  guests: 16,
  /** server → client: what has rung; after hello that of the last hour, then each as it rings. */
  alert: 17,
} as const

/** Close codes: the client stops retrying on every one of them. */
export const CLOSE = {
  signIn: 4401,
  removed: 4403,
  gone: 4404,
  otherEpoch: 4409,
  refused: 4422,
  reload: 4426,
} as const

export const LAYOUT_VERSION = 1

export const Hello = z.strictObject({
  epoch: z.string(),
  layout: z.int(),
  minClient: z.int(),
  member: Id,
  role: z.enum(['host', 'cook']),
  /** Which cook of the evening this member is; null until one is chosen. */
  cook: z.nullable(Id),
  serverMs: z.number(),
})
export type Hello = z.infer<typeof Hello>

/** About who does what: compared and set. */
export const ClaimCommand = z.discriminatedUnion('kind', [
  z.strictObject({ op, kind: z.literal('claim'), target: Id, cook: Id, also: z.optional(z.array(Id).check(z.maxLength(2))) }),
  z.strictObject({ op, kind: z.literal('release'), target: Id, cook: Id }),
  z.strictObject({ op, kind: z.literal('reassign'), target: Id, from: Id, cook: Id }),
  /** Beside whoever has it; the first where nobody has. */
  z.strictObject({ op, kind: z.literal('join'), target: Id, cook: Id }),
  /** Those who are left keep it. */
  z.strictObject({ op, kind: z.literal('leave'), target: Id, cook: Id }),
])
export type ClaimCommand = z.infer<typeof ClaimCommand>

/** What happened. `at`: when it was told, by the device's own clock in ms; `as`: the cook who tells, where the member is none. */
export const TellCommand = z.strictObject({ op, kind: z.literal('tell'), at: z.number(), as: z.optional(Id), say: Say })
export type TellCommand = z.infer<typeof TellCommand>

export const Command = z.discriminatedUnion('kind', [...ClaimCommand.def.options, TellCommand])
export type Command = z.infer<typeof Command>

/** A command on its way; `sent`: the device's own clock in ms as it went, null where a page does not say. */
export interface Sent {
  readonly command: Command
  readonly sent: number | null
}

export const CommandRefusal = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('taken'), by: Id }),
  z.strictObject({ kind: z.literal('not-yours') }),
  z.strictObject({ kind: z.literal('full') }),
  z.strictObject({ kind: z.literal('unknown-target') }),
  z.strictObject({ kind: z.literal('unknown-cook') }),
  z.strictObject({ kind: z.literal('not-stored') }),
  /** Whoever tells is no cook of the evening, and no host. */
  z.strictObject({ kind: z.literal('no-seat') }),
  /** The evening is not now. */
  z.strictObject({ kind: z.literal('not-tonight') }),
  /** No step needs that much longer. */
  z.strictObject({ kind: z.literal('too-long') }),
  /** What is to be taken back was told too long ago. */
  z.strictObject({ kind: z.literal('too-late') }),
  /** Nothing of the kind was told, or it is not to be taken back. */
  z.strictObject({ kind: z.literal('stays') }),
])
export type CommandRefusal = z.infer<typeof CommandRefusal>

export const Outcome = z.discriminatedUnion('kind', [
  /** Of what was told: the moment that was written for it; `was`: what stood there before, where taking it back needs to know. */
  z.strictObject({ op, kind: z.literal('done'), told: z.optional(Instant), was: z.optional(z.string().check(z.maxLength(40))) }),
  z.strictObject({ op, kind: z.literal('refused'), why: CommandRefusal }),
])
export type Outcome = z.infer<typeof Outcome>

/**
 * An order of the format that is known here: what was made under that name is not checked again (decision 039).
 */
const KnownOrder = z.custom<RunningOrder>(
  (value) => typeof value === 'object' && value !== null && 'format' in value && value.format === ORDER_FORMAT,
)

/**
 * `hash` is that of the problem the order belongs to; a client whose own hash differs shows "being planned again". `more`:
 * a better answer is being looked for, so that what clashes in this one may not clash in that. `looking`: ways out of its
 * clashes are still being looked for, so that a clash without one is not the last word.
 */
export const OrderMessage = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('order'),
    hash: z.string(),
    order: KnownOrder,
    more: z.optional(z.literal(true)),
    looking: z.optional(z.literal(true)),
  }),
  z.strictObject({ kind: z.literal('planning'), hash: z.string() }),
  z.strictObject({ kind: z.literal('failed'), hash: z.string(), why: z.string().check(z.maxLength(400)) }),
])
export type OrderMessage = z.infer<typeof OrderMessage>

export const Beat = z.strictObject({ serverMs: z.number() })

/** When it was, by the server's clock in milliseconds since 1970. */
export const GuestsNews = z.strictObject({ at: z.number() })

/** What calls somebody on the night. */
export const AlertKind = z.enum(['begin', 'touch', 'look', 'get-up', 'plate', 'serve', 'overdue'])

/**
 * An alert that has rung: once, whatever became of the order since. `at` is when it was due and `firedAt` when it rang, by
 * the server's clock in milliseconds since 1970. No cooks: it is for all.
 */
export const Fired = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(300)),
  at: z.number(),
  firedAt: z.number(),
  kind: AlertKind,
  cooks: z.array(Id).check(z.maxLength(24)),
  step: z.optional(Id),
  batch: z.optional(z.int().check(z.gte(0))),
  touch: z.optional(z.union([z.literal('out'), z.int().check(z.gte(1))])),
  course: z.optional(Id),
})
export type Fired = z.infer<typeof Fired>

export const Alerts = z.strictObject({ alerts: z.array(Fired).check(z.maxLength(2000)) })
