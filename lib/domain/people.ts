import * as z from 'zod/mini'
import { At, Celsius, Duration, Id, Instant, line, OrderKey, paragraphs, Word } from './atoms.ts'

export const NeedGrade = z.enum(['dislikes', 'avoids', 'allergy', 'severe'])
export type NeedGrade = z.infer<typeof NeedGrade>

/** A guest's answer; stands in the host's export only. `needs: null` is not known, which is never safe. */
export const Guest = z.strictObject({
  id: Id,
  name: line(80),
  reply: z.enum(['waiting', 'yes', 'no', 'maybe']),
  child: z.boolean(),
  portion: z.number().check(z.positive(), z.lte(5)),
  arrives: z.optional(At),
  needs: z.nullable(z.array(z.strictObject({ need: Word, grade: NeedGrade })).check(z.maxLength(40))),
  drinks: z.enum(['alcohol', 'none', 'unknown']),
  drives: z.boolean(),
  words: paragraphs(2000),
})
export type Guest = z.infer<typeof Guest>

/** Of who has not answered nothing is known: neither whether they come, nor what they eat. */
export const UNANSWERED: Omit<Guest, 'id' | 'name'> = {
  reply: 'waiting',
  child: false,
  portion: 1,
  needs: null,
  drinks: 'unknown',
  drives: false,
  words: '',
}

export const Drink = z.strictObject({
  id: Id,
  course: Id,
  order: OrderKey,
  name: line(120),
  role: z.enum(['with', 'without']),
  /** Millilitres for each person. */
  mlEach: z.number().check(z.gte(0), z.lte(2000)),
  /** Percent alcohol by volume. */
  abv: z.number().check(z.gte(0), z.lte(96)),
  servedC: z.optional(z.number().check(z.gte(-20), z.lte(100))),
})
export type Drink = z.infer<typeof Drink>

/** A cook takes a course, a dish or a step; the nearest claim to a step wins. */
export const Claim = z.strictObject({ target: Id, cook: Id, also: z.optional(z.array(Id).check(z.maxLength(2))) })
export type Claim = z.infer<typeof Claim>

/** What happened on the night, and when. `by` is the cook who said so. */
export const NightFact = z.union([
  /** The evening is live from `begun` until it is `closed`. */
  z.strictObject({ night: z.literal('begun'), begun: Instant, closed: z.optional(Instant), by: Id }),
  z.strictObject({
    step: Id,
    started: z.optional(Instant),
    done: z.optional(Instant),
    extra: z.optional(Duration),
    /** What the thermometer said, oldest first. */
    readings: z.optional(z.array(z.strictObject({ at: Instant, coreC: Celsius })).check(z.maxLength(12))),
    by: Id,
  }),
  z.strictObject({
    course: Id,
    toTable: z.optional(Instant),
    nearlyDone: z.optional(Instant),
    platesOff: z.optional(Instant),
    by: Id,
  }),
  z.strictObject({ sitDown: Instant, by: Id }),
  /** A cook is not there from `gone` on, until `back`. */
  z.strictObject({ cook: Id, gone: Instant, back: z.optional(Instant), by: Id }),
  /** A dish does not come to the table; another may instead. */
  z.strictObject({ dish: Id, out: Instant, why: z.enum(['failed', 'dropped']), instead: z.optional(Id), by: Id }),
  /** Something got into a dish that nobody with `need` (null: nobody at all) may eat; over when every cook has confirmed. */
  z.strictObject({
    alarm: Id,
    dish: Id,
    need: z.nullable(Word),
    at: Instant,
    confirmed: z.optional(z.array(z.strictObject({ cook: Id, at: Instant })).check(z.maxLength(24))),
    by: Id,
  }),
])
export type NightFact = z.infer<typeof NightFact>

/** What a fact is about: one fact a subject. */
export const nightKey = (fact: NightFact): string => {
  if ('step' in fact) return `step:${fact.step}`
  if ('course' in fact) return `course:${fact.course}`
  if ('cook' in fact) return `cook:${fact.cook}`
  if ('alarm' in fact) return `alarm:${fact.alarm}`
  if ('dish' in fact) return `dish:${fact.dish}`
  return 'night' in fact ? 'night' : 'sit-down'
}

/** A need that at least one guest has told, and how many of those who come, or may come, have it; no names. */
export interface KnownNeed {
  readonly need: string
  readonly grade: NeedGrade
  readonly guests: number
}
