import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { type FoodSort, foodSort, isPerishable } from './foods.ts'

const MINUTE_MS = 60_000
/** Still hot from the heat before: common practice, no source. */
const STILL_HOT_MS = 30 * MINUTE_MS
const HOT_OVEN_C = 60
/** What is told to boil is hotter than any limit. */
const BOILS = /\b(?:boil|simmer|bubbl)/i
const HOT_TOOLS = /slow cooker|rice cooker|steamer|grill|fryer|microwave|barbecue/i

/** What a step does to the heat of its food. An oven below 60 °C keeps nothing hot. */
export type Place = 'heat' | 'cold' | 'frozen' | 'room'

export const placeOf = (way: Way | undefined): Place => {
  const uses = way?.uses ?? []
  const cold = uses.find((use) => use.kind === 'cold')
  if (cold) return cold.keep
  return uses.some(
    (use) =>
      use.kind === 'ring' || (use.kind === 'oven' && use.lowC >= HOT_OVEN_C) || (use.kind === 'tool' && HOT_TOOLS.test(use.tool)),
  )
    ? 'heat'
    : 'room'
}

/** A step with its time: `end` is when its first batch is over, which waits longest, `start` when its last one begins. */
export interface Timed {
  readonly step: Step
  readonly way: Way
  readonly place: Place
  readonly begins: number
  readonly start: number
  readonly end: number
}

/** Since when food has been out, after which step, and the steps between which it stands longest. */
export interface Out {
  readonly since: number
  /** The step that it was last hot or cold in; null: it came out as the first step began. */
  readonly after: string | null
  readonly first: string
  readonly gap: { readonly after: string; readonly before: string; readonly ms: number } | null
}

/** How food stands when a step begins or is over. */
export interface Standing {
  readonly out: Out | null
  /** Out so far since it was last cooked, apart from the present time. */
  readonly beforeMs: number
  readonly raw: boolean
  readonly sorts: readonly FoodSort[]
  readonly isPanned: boolean
  /** When it was first cooked, whether it was cold since, and how often it was heated from the cold. */
  readonly cookedAt: number | null
  readonly chilled: boolean
  readonly reheats: number
}

export interface Walked {
  readonly timed: Timed
  readonly before: Standing
  readonly after: Standing
  readonly perishable: boolean
  /** Heated from the cold after it was cooked. */
  readonly isReheat: boolean
  readonly isLast: boolean
}

/** The steps of a dish that are in the order, by when they begin. */
const timedSteps = (evening: Evening, dish: string, order: RunningOrder): readonly Timed[] =>
  evening.steps
    .filter((step) => step.dish === dish)
    .flatMap((step): Timed[] => {
      const cues = order.cues.filter((cue) => cue.step === step.id)
      const way = step.ways[cues[0]?.way ?? 0]
      if (cues.length === 0 || !way) return []
      const starts = cues.map(({ start }) => msOfInstant(start))
      return [
        {
          step,
          way,
          place: placeOf(way),
          begins: Math.min(...starts),
          start: Math.max(...starts),
          end: Math.min(...cues.map(({ end }) => msOfInstant(end))),
        },
      ]
    })
    .toSorted((a, b) => a.begins - b.begins || a.end - b.end)

const NOTHING: Standing = {
  out: null,
  beforeMs: 0,
  raw: false,
  sorts: [],
  isPanned: false,
  cookedAt: null,
  chilled: false,
  reheats: 0,
}

const earlier = (a: number | null, b: number | null): number | null => (a === null ? b : b === null ? a : Math.min(a, b))

const merged = (a: Standing, b: Standing): Standing => ({
  out: a.out === null ? b.out : b.out === null || a.out.since <= b.out.since ? a.out : b.out,
  beforeMs: Math.max(a.beforeMs, b.beforeMs),
  raw: a.raw || b.raw,
  sorts: [...new Set([...a.sorts, ...b.sorts])],
  isPanned: a.isPanned || b.isPanned,
  cookedAt: earlier(a.cookedAt, b.cookedAt),
  chilled: a.chilled || b.chilled,
  reheats: Math.max(a.reheats, b.reheats),
})

/** The same, standing on until the next step begins. */
const until = (standing: Standing, from: Timed, to: Timed): Standing => {
  const { out } = standing
  const ms = Math.max(0, to.start - from.end)
  if (out === null || (out.gap !== null && out.gap.ms >= ms)) return standing
  return { ...standing, out: { ...out, gap: { after: from.step.id, before: to.step.id, ms } } }
}

/**
 * A dish's food from step to step: hot, cold or out. It is counted as out from the moment it leaves the heat or the fridge, as if it cooled at
 * once. Heat makes it new only when something raw is cooked in it, when it is still hot, or when it is told to boil or to
 * reach `reheatC` inside.
 */
export const walk = (evening: Evening, dish: Dish, order: RunningOrder, reheatC: number): readonly Walked[] => {
  const steps = timedSteps(evening, dish.id, order)
  const own = evening.ingredients.filter((ingredient) => ingredient.dish === dish.id)
  const loose = own.filter(({ step }) => step === undefined).map(foodSort)
  const known: Map<string, Walked> = new Map()
  const waitedFor = new Set(steps.flatMap(({ step }) => step.after.map((after) => after.step)))
  for (const timed of steps) {
    const added = own.filter(({ step }) => step === timed.step.id).map(foodSort)
    const befores = timed.step.after.flatMap(({ step }) => {
      const found = known.get(step)
      return found ? [until(found.after, found.timed, timed)] : []
    })
    const coming = befores.reduce(merged, NOTHING)
    const sorts: readonly FoodSort[] = own.length === 0 ? ['not-known'] : [...new Set([...coming.sorts, ...loose, ...added])]
    const isNew = isPerishable(
      [...added, ...(befores.length === 0 ? [...loose, ...(own.length === 0 ? ['not-known' as const] : [])] : [])],
      'not',
    )
    const isPanned = coming.isPanned || (timed.place === 'heat' && timed.way.uses.some((use) => use.kind !== 'oven'))
    const isHeated = coming.cookedAt !== null || timed.place === 'heat'
    const perishable = isPerishable(sorts, isPanned ? 'in-a-pan' : isHeated ? 'baked' : 'not')
    const before: Standing = {
      ...coming,
      sorts,
      isPanned,
      raw: coming.raw || isNew,
      out: coming.out ?? (isNew ? { since: timed.begins, after: null, first: timed.step.id, gap: null } : null),
    }
    const isReheat = timed.place === 'heat' && before.cookedAt !== null && before.chilled && !before.raw
    known.set(timed.step.id, {
      timed,
      before,
      after: afterStep(timed, before, perishable, isReheat, reheatC),
      perishable,
      isReheat,
      isLast: !waitedFor.has(timed.step.id),
    })
  }
  return [...known.values()]
}

const afterStep = (timed: Timed, before: Standing, perishable: boolean, isReheat: boolean, reheatC: number): Standing => {
  const outAfter: Out | null = perishable ? { since: timed.end, after: timed.step.id, first: timed.step.id, gap: null } : null
  switch (timed.place) {
    case 'cold':
    case 'frozen':
      return {
        ...before,
        out: outAfter,
        beforeMs: before.beforeMs + (before.out === null ? 0 : Math.max(0, timed.start - before.out.since)),
        chilled: before.chilled || before.cookedAt !== null,
      }
    case 'heat': {
      const isCooked = before.cookedAt === null || before.raw
      const stillHot = before.out !== null && timed.start - before.out.since <= STILL_HOT_MS && !before.chilled
      const isThrough =
        (timed.step.until?.coreC ?? 0) >= reheatC || BOILS.test(`${timed.step.does} ${timed.step.until?.sign ?? ''}`)
      const isNew = isCooked || stillHot || isThrough
      return {
        ...before,
        out: isNew || before.out === null ? outAfter : before.out,
        beforeMs: isNew ? 0 : before.beforeMs,
        raw: false,
        cookedAt: before.cookedAt ?? timed.end,
        chilled: isReheat ? false : before.chilled && !isCooked,
        reheats: before.reheats + (isReheat ? 1 : 0),
      }
    }
    case 'room':
      return before
  }
}

/** Minutes of a duration, and of a difference of two instants. */
export const minutesOf = (duration: string): number => secondsOf(duration) / 60
export const minutesBetween = (from: number, to: number): number => Math.max(0, (to - from) / MINUTE_MS)
