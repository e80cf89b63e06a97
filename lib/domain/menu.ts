import * as z from 'zod/mini'
import { At, Celsius, Duration, Id, line, OrderKey, paragraphs, Span, Word } from './atoms.ts'
import { Use } from './kitchen.ts'

export const Bound = z.enum(['quality', 'safety'])
export type Bound = z.infer<typeof Bound>

export const Course = z.strictObject({
  id: Id,
  order: OrderKey,
  name: line(120),
  service: z.enum(['plated', 'platters', 'on-table']),
  /** The one course before sit-down, from when the guests come. */
  welcome: z.optional(z.literal(true)),
  /** A welcome of the children's own: they eat it at that time, before everybody sits down, so many of them beside the covers. */
  children: z.optional(z.strictObject({ at: At, covers: z.int().check(z.gte(1), z.lte(60)) })),
  lead: z.optional(Id),
  /** Who stays at the table for it. */
  hosts: z.optional(Id),
  /** Who pours and who takes the plates off: told to the cooks, and counted by no running order. */
  pours: z.optional(Id),
  clears: z.optional(Id),
  eating: Span,
  clearing: Duration,
  pouring: Duration,
  wait: z.strictObject({ ideal: z.tuple([Duration, Duration]), most: Duration }),
  notBefore: z.optional(At),
})
export type Course = z.infer<typeof Course>

export const KeepHow = z.enum(['hot', 'warm', 'room', 'cold', 'frozen'])
export type KeepHow = z.infer<typeof KeepHow>

export const Dish = z.strictObject({
  id: Id,
  course: Id,
  order: OrderKey,
  name: line(120),
  kitchen: Id,
  yields: z.number().check(z.positive(), z.lte(1000)),
  /** How many are to be fed from it; the covers when absent. */
  portions: z.optional(z.number().check(z.positive(), z.lte(1000))),
  state: z.enum(['on', 'dropped', 'spare']),
  standIn: z.optional(Id),
  /** How long before and after the course's moment the dish may reach the table. */
  toTable: z.strictObject({ early: Duration, late: Duration }),
  /** How a finished dish may wait, from its last step to the table, and what it occupies meanwhile. */
  keeps: z.strictObject({
    how: KeepHow,
    most: Duration,
    kind: z._default(Bound, 'quality'),
    uses: z.array(Use).check(z.maxLength(6)),
  }),
  carry: z.optional(z.strictObject({ how: KeepHow, most: Duration, kind: z._default(Bound, 'quality') })),
  variant: z.optional(z.strictObject({ of: Id, fork: Id, portions: z.number().check(z.positive(), z.lte(1000)) })),
  /**
   * Its cook has read every label and kept it apart in the kitchen, for these needs. `of`: a mark of what the dish was made of when that
   * was said; when it is made of something else, nothing is confirmed.
   */
  confirmed: z.optional(
    z.strictObject({
      for: z.array(Word).check(z.maxLength(20)),
      of: z.string().check(z.regex(/^[0-9a-z]{1,16}$/, 'must be 1 to 16 lower-case letters or digits')),
    }),
  ),
  source: z.optional(z.url({ protocol: /^https?$/ }).check(z.maxLength(2000))),
  notes: paragraphs(8000),
})
export type Dish = z.infer<typeof Dish>

/** A moment at which somebody stands at a step that is otherwise left alone. */
export const Touch = z.strictObject({
  when: z.union([z.enum(['in', 'out']), z.strictObject({ every: Duration })]),
  /** What is done then: "baste". */
  does: z.optional(line(80)),
  takes: Duration,
  lateBy: Duration,
})
export type Touch = z.infer<typeof Touch>

export const Care = z.enum(['hands-on', 'eye', 'leave'])
export type Care = z.infer<typeof Care>

/** One way of doing a step. `upTo`: a step left alone may last longer by choice. */
export const Way = z.strictObject({
  care: Care,
  cooks: z.int().check(z.gte(1), z.lte(3)),
  takes: Span,
  upTo: z.optional(Duration),
  touches: z.array(Touch).check(z.maxLength(6)),
  uses: z.array(Use).check(z.maxLength(6)),
})
export type Way = z.infer<typeof Way>

/** This step starts at least `least`, at most `most` after the other's end or start. */
export const After = z.strictObject({
  step: Id,
  from: z.enum(['end', 'start']),
  least: Duration,
  most: z.optional(Duration),
  kind: Bound,
})
export type After = z.infer<typeof After>

export const StepRole = z.enum(['make', 'carry', 'finish', 'plate', 'chore'])
export type StepRole = z.infer<typeof StepRole>

/** What a step does for a severe allergy: a clean place to begin, the cover, the plate, the way to the table. */
export const Guard = z.strictObject({ for: Word, does: z.enum(['begin', 'cover', 'plate', 'carry']) })
export type Guard = z.infer<typeof Guard>

export const Step = z.strictObject({
  id: Id,
  /** null: a chore of the house. */
  dish: z.nullable(Id),
  order: OrderKey,
  does: line(400),
  role: StepRole,
  where: z.enum(['kitchen', 'table', 'outside']),
  ways: z.array(Way).check(z.minLength(1), z.maxLength(3)),
  /** Steps of one vessel are the same pan on the same ring, from the first start to the last end. */
  vessel: z.optional(Id),
  after: z.array(After).check(z.maxLength(20)),
  earliest: z.optional(At),
  latest: z.optional(At),
  batch: z.optional(
    z.strictObject({ portions: z.number().check(z.positive(), z.lte(1000)), together: z.int().check(z.gte(1), z.lte(20)) }),
  ),
  guard: z.optional(Guard),
  until: z.optional(z.strictObject({ coreC: z.optional(Celsius), sign: z.optional(line(200)) })),
})
export type Step = z.infer<typeof Step>
