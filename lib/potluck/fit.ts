import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { missingKit } from '#lib/domain/kit-wants.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { type Busy, fullWhile } from './full.ts'
import { type HoursLack, hoursLack } from './hours.ts'
import { AS_OFFERED, type Variant } from './variant.ts'

/** What a trial of an offer in one form came to. */
export type Fit =
  | { readonly kind: 'fits' }
  /** Its cook has said no hours in which it could be carried. */
  | { readonly kind: 'no-hours'; readonly cook: string; readonly lacks: HoursLack }
  /** The host's kitchen has no such kit, or it is too small. */
  | { readonly kind: 'lacks'; readonly use: Use }
  /** Kit that it wants at the host's is taken by others then. */
  | ({ readonly kind: 'full' } & Busy)
  /** From home to the table is longer than it stays hot. */
  | { readonly kind: 'too-long'; readonly by: string; readonly most: string }
  /** Something else no longer holds, of itself or of others. */
  | { readonly kind: 'hurts'; readonly clashes: readonly Clash[] }

/** A form that was tried, with what it came to. */
export interface Tried {
  readonly variant: Variant
  readonly fit: Fit
}

/** What the host is told: whether it fits as offered, and the first other form that does. */
export type Verdict =
  | { readonly kind: 'fits' }
  | { readonly kind: 'fits-if'; readonly variant: Variant; readonly because: Fit }
  /** No form of it does. */
  | { readonly kind: 'does-not'; readonly because: Fit }

const keyOf = ({ kind, steps, dish, course, kit }: Clash): string =>
  [kind, [...steps].toSorted().join(' '), dish ?? '', course ?? '', kit ?? ''].join('|')

/** A minute more or less is the planner's search and no harm of the offer. */
const SLIGHT_SECONDS = 60

/** Clashes that were not there before, or are worse by more than a minute. */
export const newClashes = (before: RunningOrder, after: RunningOrder): readonly Clash[] => {
  const known = new Map(before.clashes.map((clash) => [keyOf(clash), secondsOf(clash.by)]))
  return after.clashes.filter((clash) => {
    const was = known.get(keyOf(clash))
    return was === undefined || secondsOf(clash.by) > was + SLIGHT_SECONDS
  })
}

/**
 * What a trial came to: from the order of now, the order with the offer, and the evening with it (in which `dish` is what it became). Pure:
 * the planning is done elsewhere. The first cause that a person can do something about is told.
 */
export const fitOf = (before: RunningOrder, after: RunningOrder, evening: Evening, dish: string): Fit => {
  const clashes = newClashes(before, after)
  if (clashes.length === 0) return { kind: 'fits' }
  const found = evening.dishes.find(({ id }) => id === dish)
  const offer = (evening.offers ?? []).find((each) => each.dish === dish)
  const lacks = offer ? hoursLack(evening, offer) : null
  if (offer && lacks) return { kind: 'no-hours', cook: offer.cook, lacks }
  const lacking = missingKit(evening).find((want) => want.dish?.id === dish && want.kitchen === evening.host && want.stuck)
  if (lacking) return { kind: 'lacks', use: lacking.use }
  const busy = fullWhile(evening, before, dish)
  if (busy && (isLeft(evening, after, dish) || clashes.some((clash) => isAbout(evening, before, clash, dish, busy.kit))))
    return { kind: 'full', ...busy }
  const road = found && clashes.find((clash) => clash.dish === dish && isOfRoad(evening, found, clash))
  if (road && found?.carry) return { kind: 'too-long', by: road.by, most: found.carry.most }
  return { kind: 'hurts', clashes }
}

/** Whether a step of the dish has no place in the order. */
const isLeft = (evening: Evening, order: RunningOrder, dish: string): boolean => {
  const placed = new Set(order.cues.map(({ step }) => step))
  return evening.steps.some((step) => step.dish === dish && !placed.has(step.id))
}

/** A clash of the dish, or of another one that has that kit in the order without it. */
const isAbout = (evening: Evening, before: RunningOrder, clash: Clash, dish: string, kit: string): boolean => {
  if (clash.dish === dish || clash.kit === kit) return true
  const dishOf = new Map(evening.steps.map((step) => [step.id, step.dish]))
  const about = new Set([clash.dish, ...clash.steps.map((step) => dishOf.get(step) ?? null)].filter((id) => id !== null))
  return before.cues.some((cue) => about.has(dishOf.get(cue.step) ?? '') && cue.kit.some(({ id }) => id === kit))
}

/**
 * The way breaks its limit: a wish is a clash of its own kind, a matter of safety leaves the dish's steps out. What comes hot and is plated
 * as it comes, so as to keep the limit, waits on its plates instead.
 */
const isOfRoad = (evening: Evening, { id, carry }: Dish, { kind, steps }: Clash): boolean =>
  kind === 'carry' ||
  (kind === 'safety' && evening.steps.some((step) => step.role === 'carry' && steps.includes(step.id))) ||
  (kind === 'keeps' && carry?.how === 'hot' && evening.steps.every((step) => step.dish !== id || step.role !== 'finish'))

/** What the host is told of the forms that were tried, as offered first. */
export const verdictOf = (tried: readonly Tried[]): Verdict => {
  const first = tried.find(({ variant }) => variant.kind === AS_OFFERED.kind)?.fit
  if (!first || first.kind === 'fits') return { kind: 'fits' }
  const other = tried.find(({ fit }) => fit.kind === 'fits')
  return other ? { kind: 'fits-if', variant: other.variant, because: first } : { kind: 'does-not', because: first }
}
