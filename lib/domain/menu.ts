import { z } from 'zod'
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
  welcome: z.literal(true).optional(),
  /** A welcome of the children's own: they eat it at that time, before everybody sits down, so many of them beside the covers. */
  children: z.strictObject({ at: At, covers: z.int().min(1).max(60) }).optional(),
  lead: Id.optional(),
  /** Who stays at the table for it. */
  hosts: Id.optional(),
  /** Who pours and who takes the plates off: told to the cooks, and counted by no running order. */
  pours: Id.optional(),
  clears: Id.optional(),
  eating: Span,
  clearing: Duration,
  pouring: Duration,
  wait: z.strictObject({ ideal: z.tuple([Duration, Duration]), most: Duration }),
  notBefore: At.optional(),
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
  yields: z.number().positive().max(1000),
  /** How many are to be fed from it; the covers when absent. */
  portions: z.number().positive().max(1000).optional(),
  state: z.enum(['on', 'dropped', 'spare']),
  standIn: Id.optional(),
  /** How long before and after the course's moment the dish may reach the table. */
  toTable: z.strictObject({ early: Duration, late: Duration }),
  /** How a finished dish may wait, from its last step to the table, and what it occupies meanwhile. */
  keeps: z.strictObject({ how: KeepHow, most: Duration, kind: Bound.default('quality'), uses: z.array(Use).max(6) }),
  carry: z.strictObject({ how: KeepHow, most: Duration, kind: Bound.default('quality') }).optional(),
  variant: z.strictObject({ of: Id, fork: Id, portions: z.number().positive().max(1000) }).optional(),
  /**
   * Its cook has read every label and kept it apart in the kitchen, for these needs. `of`: a mark of what the dish was made of when that
   * was said; when it is made of something else, nothing is confirmed.
   */
  confirmed: z
    .strictObject({
      for: z.array(Word).max(20),
      of: z.string().regex(/^[0-9a-z]{1,16}$/, 'must be 1 to 16 lower-case letters or digits'),
    })
    .optional(),
  source: z
    .url({ protocol: /^https?$/ })
    .max(2000)
    .optional(),
  notes: paragraphs(8000),
})
export type Dish = z.infer<typeof Dish>

/** A moment at which somebody stands at a step that is otherwise left alone. */
export const Touch = z.strictObject({
  when: z.union([z.enum(['in', 'out']), z.strictObject({ every: Duration })]),
  /** What is done then: "baste". */
  does: line(80).optional(),
  takes: Duration,
  lateBy: Duration,
})
export type Touch = z.infer<typeof Touch>

export const Care = z.enum(['hands-on', 'eye', 'leave'])
export type Care = z.infer<typeof Care>

/** One way of doing a step. `upTo`: a step left alone may last longer by choice. */
export const Way = z.strictObject({
  care: Care,
  cooks: z.int().min(1).max(3),
  takes: Span,
  upTo: Duration.optional(),
  touches: z.array(Touch).max(6),
  uses: z.array(Use).max(6),
})
export type Way = z.infer<typeof Way>

/** This step starts at least `least`, at most `most` after the other's end or start. */
export const After = z.strictObject({
  step: Id,
  from: z.enum(['end', 'start']),
  least: Duration,
  most: Duration.optional(),
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
  dish: Id.nullable(),
  order: OrderKey,
  does: line(400),
  role: StepRole,
  where: z.enum(['kitchen', 'table', 'outside']),
  ways: z.array(Way).min(1).max(3),
  /** Steps of one vessel are the same pan on the same ring, from the first start to the last end. */
  vessel: Id.optional(),
  after: z.array(After).max(20),
  earliest: At.optional(),
  latest: At.optional(),
  batch: z.strictObject({ portions: z.number().positive().max(1000), together: z.int().min(1).max(20) }).optional(),
  guard: Guard.optional(),
  until: z.strictObject({ coreC: Celsius.optional(), sign: line(200).optional() }).optional(),
})
export type Step = z.infer<typeof Step>
