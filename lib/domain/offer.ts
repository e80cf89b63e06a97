import * as z from 'zod/mini'
import { Celsius, Duration, Id, line, OrderKey, Span, Word } from './atoms.ts'
import { RingSize } from './kitchen.ts'
import { KeepHow } from './menu.ts'

/** In what state it reaches the host's: nothing left to do but plate, to be heated, to be finished, to be put together. */
export const Arrives = z.enum(['ready', 'to-heat', 'to-finish', 'to-assemble'])
export type Arrives = z.infer<typeof Arrives>

/** What a table needs that is not food, and that can be counted. */
export const TableThing = z.enum(['chairs', 'plates', 'glasses', 'cutlery', 'ice'])
export type TableThing = z.infer<typeof TableThing>

/** What the house has of each: pieces, sets of cutlery, kilograms of ice. What is absent nobody has said. */
export const House = z.strictObject({
  chairs: z.optional(z.int().check(z.gte(0), z.lte(1000))),
  plates: z.optional(z.int().check(z.gte(0), z.lte(1000))),
  glasses: z.optional(z.int().check(z.gte(0), z.lte(1000))),
  cutlery: z.optional(z.int().check(z.gte(0), z.lte(1000))),
  ice: z.optional(z.int().check(z.gte(0), z.lte(1000))),
})
export type House = z.infer<typeof House>

/** What it wants at the host's: room in the oven or on the hob and for how long, hands, the fridge, tools. */
export const AtHost = z.strictObject({
  /** In the oven: so many shelves, at these temperatures, for `heat`. */
  shelves: z.optional(z.int().check(z.gte(1), z.lte(8))),
  lowC: z.optional(Celsius),
  highC: z.optional(Celsius),
  /** On the hob, for `heat`; with shelves as well, either will do. */
  ring: z.optional(RingSize),
  heat: z.optional(Span),
  /** Work by hand before it is plated: dressing, slicing, putting together. */
  finish: z.optional(Span),
  /** Places in the fridge from its arrival on. */
  cold: z.optional(z.int().check(z.gte(1), z.lte(60))),
  tools: z.optional(z.array(line(40).check(z.minLength(1))).check(z.maxLength(5))),
})
export type AtHost = z.infer<typeof AtHost>

/** What the hosts say to it. */
export const Answer = z.enum(['offered', 'accepted', 'declined'])
export type Answer = z.infer<typeof Answer>

/** What a cook brings, or would: food or a thing, from where, in what state, and what it wants of the host's kitchen. */
export const Offer = z.strictObject({
  id: Id,
  order: OrderKey,
  cook: Id,
  kind: z.enum(['dish', 'thing']),
  name: line(120),
  /** Of a thing, which of those that are counted it is; another one when absent. */
  thing: z.optional(TableThing),
  course: z.optional(Id),
  /** The home it comes from; made at the host's when absent. */
  kitchen: z.optional(Id),
  /** How many it feeds; of a thing, how many. */
  portions: z.number().check(z.positive(), z.lte(1000)),
  /** Needs that it is meant to suit, as its cook says: a wish until the ingredients say so. */
  suits: z.optional(z.array(Word).check(z.maxLength(20))),
  arrives: Arrives,
  /** How it is carried. */
  how: KeepHow,
  /** What keeps it so on the road, and for how long at most. */
  box: z.optional(z.strictObject({ name: line(60), most: Duration })),
  atHost: z.optional(AtHost),
  vessel: z.optional(z.strictObject({ name: line(60), goesHome: z.boolean() })),
  /** Work at home before it leaves. */
  home: z.optional(Span),
  /** A host's; `withdrawn` is its cook's, and stands above it. */
  state: Answer,
  withdrawn: z.optional(z.literal(true)),
  /** The host's reason for declining. */
  why: z.optional(line(200)),
  /** The dish that it became. */
  dish: z.optional(Id),
})
export type Offer = z.infer<typeof Offer>

/** How an offer stands: withdrawn by its cook, whatever was said to it, or as the hosts answered. */
export const stateOf = ({ state, withdrawn }: Pick<Offer, 'state' | 'withdrawn'>): Answer | 'withdrawn' =>
  withdrawn ? 'withdrawn' : state
