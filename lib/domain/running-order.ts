import * as z from 'zod/mini'
import { At, Celsius, Duration, Id, Instant } from './atoms.ts'

export const ORDER_FORMAT = 'tableward-order/1'

const Ticks = z.int().check(z.gte(0))
const KitUnit = z.strictObject({ id: Id, unit: z.int().check(z.gte(0)) })
export type KitUnit = z.infer<typeof KitUnit>

/** Why a cue is where it is: what would break if it moved. */
export const Reason = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('after'), step: Id }),
  z.strictObject({ kind: z.literal('kit'), kit: Id, step: Id }),
  z.strictObject({ kind: z.literal('cook'), cook: Id, step: Id }),
  z.strictObject({ kind: z.literal('oven'), kit: Id, step: Id }),
  z.strictObject({ kind: z.literal('course'), course: Id }),
  z.strictObject({ kind: z.literal('window') }),
  z.strictObject({ kind: z.literal('presence'), cook: Id }),
  z.strictObject({ kind: z.literal('now') }),
])
export type Reason = z.infer<typeof Reason>

/** What the guests would notice of a remedy. */
const price = { missed: Duration, said: z.string() }

/** A change that was tried: the engine planned again with it and the clash was gone. */
export const Remedy = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('use-way'), step: Id, way: Ticks, ...price }),
  z.strictObject({ kind: z.literal('do-ahead'), step: Id, earliest: At, ...price }),
  z.strictObject({ kind: z.literal('other-oven'), step: Id, kit: Id, ...price }),
  z.strictObject({ kind: z.literal('course-later'), course: Id, by: Duration, ...price }),
  z.strictObject({ kind: z.literal('give-to'), step: Id, cook: Id, ...price }),
  z.strictObject({ kind: z.literal('widen-temperature'), step: Id, way: Ticks, lowC: Celsius, highC: Celsius, ...price }),
  z.strictObject({ kind: z.literal('keep-longer'), dish: Id, by: Duration, ...price }),
  z.strictObject({ kind: z.literal('wait-longer'), step: Id, after: Id, by: Duration, ...price }),
  /** Carried cold and heated at the host's: the steps that it gets for that, of which `heat` may be one that it has. */
  z.strictObject({ kind: z.literal('bring-cold'), dish: Id, chill: Id, fridge: Id, heat: Id, ...price }),
  z.strictObject({ kind: z.literal('drop'), dish: Id, ...price }),
])
export type Remedy = z.infer<typeof Remedy>

export const ClashKind = z.enum(['lag', 'keeps', 'carry', 'wait', 'sit-down', 'safety', 'no-cook', 'no-kit'])
export type ClashKind = z.infer<typeof ClashKind>

/** Why the running order cannot keep every wish, and by how much. */
export const Clash = z.strictObject({
  kind: ClashKind,
  steps: z.array(Id),
  dish: z.nullable(Id),
  course: z.nullable(Id),
  kit: z.nullable(Id),
  from: Instant,
  to: Instant,
  by: Duration,
  ways: z.array(Remedy),
})
export type Clash = z.infer<typeof Clash>

/** One line of the running order: a step (or one batch of it) with its time, cooks and kit. */
export const Cue = z.strictObject({
  step: Id,
  batch: Ticks,
  /** Index into the step's ways. */
  way: Ticks,
  start: Instant,
  end: Instant,
  cooks: z.array(Id),
  kit: z.array(KitUnit),
  kitchen: Id,
  touches: z.array(z.strictObject({ at: Instant, cook: Id })),
  state: z.enum(['planned', 'frozen', 'running', 'done']),
  /** How much later it may start, all else fixed, no wish broken. */
  slack: Duration,
  because: z.array(Reason),
})
export type Cue = z.infer<typeof Cue>

/** What gives when a course waits too long. */
export const Suffers = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('dish'), dish: Id }),
  z.strictObject({ kind: z.literal('step'), step: Id }),
  z.strictObject({ kind: z.literal('cook'), cook: Id }),
])
export type Suffers = z.infer<typeof Suffers>

/** What the scheduler derives from an evening. Never edited, only planned again. */
export const RunningOrder = z.strictObject({
  format: z.literal(ORDER_FORMAT),
  evening: Id,
  of: z.strictObject({ hash: z.string(), engine: z.string(), seed: z.int(), budget: z.number() }),
  origin: Instant,
  zone: z.string(),
  cues: z.array(Cue),
  keeping: z.array(z.strictObject({ dish: Id, from: Instant, to: Instant, kit: z.array(KitUnit) })),
  courses: z.array(
    z.strictObject({
      course: Id,
      toTable: Instant,
      platesOff: Instant,
      wait: Duration,
      onTime: z.nullable(z.number().check(z.gte(0), z.lte(1))),
      decidedBy: z.nullable(Id),
      waitFreeUntil: z.nullable(Instant),
      /** What gives first after that, and until when nothing else does; null when it cannot be later at all. */
      waitBeyond: z.optional(z.strictObject({ suffers: z.array(Suffers), until: z.nullable(Instant) })),
    }),
  ),
  ovens: z.array(
    z.strictObject({ kit: Id, line: z.array(z.strictObject({ at: Instant, c: z.number() })), preheats: z.array(Instant) }),
  ),
  cooks: z.array(
    z.strictObject({
      cook: Id,
      missed: Duration,
      handsOn: Duration,
      sits: z.array(z.strictObject({ from: Instant, to: Instant })),
    }),
  ),
  /** Between the first and the last course: all hosts up, less plating bursts of at most 6 min. */
  allHostsAway: Duration,
  goals: z.array(z.strictObject({ goal: z.string(), cost: z.number() })),
  total: z.number(),
  clashes: z.array(Clash),
  proof: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('none') }),
    z.strictObject({ kind: z.literal('bound'), total: z.number() }),
    z.strictObject({ kind: z.literal('best') }),
    z.strictObject({ kind: z.literal('fight'), wishes: z.array(z.string()) }),
  ]),
})
export type RunningOrder = z.infer<typeof RunningOrder>
