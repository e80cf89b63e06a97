import { placeOfTrial } from './fits.ts'
import { findKit, gapBetween } from './kit-fits.ts'
import type { DeliveryModel, UseModel } from './model.ts'
import type { Item, Keep, Place } from './place.ts'
import { countCold, happened, mayBeCold, NEVER_WORTH, readyOf } from './price.ts'
import type { Trial, Want } from './scratch.ts'
import { holdItem, put, putKeep, type State, take } from './state.ts'

/** Works out anew when and where a dish waits for the table. Its keep is without kit when there is no room for it. */
export const refreshKeep = (state: State, delivery: DeliveryModel): void => {
  if (state.keeps[delivery.index]) putKeep(state, delivery, undefined)
  const ready = readyOf(state, delivery)
  if (ready === Number.NEGATIVE_INFINITY) return
  const to = Math.max(ready, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  if (ready < to) putKeep(state, delivery, keepFor(state, delivery, ready, to))
}

/**
 * What it costs that its dish has no room to wait, or an oven no time to heat, once this is there. Pre: neither the place
 * nor the keep is put.
 */
export const keepRise = (state: State, trial: Trial): number => {
  const delivery = trial.act?.delivery
  if (!delivery) return 0
  if (isTangled(state, trial, delivery)) return keepRiseOnceThere(state, placeOfTrial(trial), delivery)
  const from = Math.max(readyOf(state, delivery), trial.end)
  const to = Math.max(from, (state.moments[delivery.serving.index] ?? 0) - delivery.early)
  return from >= to || findKit(state, keepWanting(state, delivery, delivery.uses, from, to), state.scratch.kit) ? 0 : NEVER_WORTH
}

const keepWanting = (state: State, delivery: DeliveryModel, uses: readonly UseModel[], from: number, to: number): Want => {
  const { wanting } = state.scratch
  wanting.who = state.model.acts.length + delivery.index
  wanting.uses = uses
  wanting.from = from
  wanting.to = to
  wanting.touched = 0
  wanting.vessel = -1
  wanting.isActivity = false
  return wanting
}

/** Does the place itself bear on where the dish may wait? */
const isTangled = (state: State, { mode }: Trial, delivery: DeliveryModel): boolean => {
  for (const use of mode?.uses ?? []) for (const other of delivery.uses) if (use.kind === other.kind) return true
  for (const kit of state.model.ovens) if (mayBeCold(state, kit)) return true
  return false
}

const keepRiseOnceThere = (state: State, place: Place, delivery: DeliveryModel): number => {
  const { recording } = state
  const cold = countCold(state)
  state.recording = false
  put(state, place)
  refreshKeep(state, delivery)
  const worse = countCold(state) - cold + (state.keeps[delivery.index]?.clash ? 1 : 0)
  putKeep(state, delivery, undefined)
  take(state, place.act)
  state.recording = recording
  return NEVER_WORTH * worse
}

const keepFor = (state: State, delivery: DeliveryModel, from: number, to: number): Keep => {
  const who = state.model.acts.length + delivery.index
  const isFact = delivery.serving.served !== undefined || happened(state, delivery)
  const uses = isFact ? delivery.factUses : delivery.uses
  const found: number[] = []
  const free = findKit(state, keepWanting(state, delivery, uses, from, to), found) ? found : undefined
  const kit = free ?? (isFact ? whereItWaits(state, uses, from, to) : undefined)
  const items: Item[] = []
  for (const [i, index] of (kit ?? []).entries()) {
    const use = uses[i]
    const lane = state.kitLanes[index]
    if (use && lane) items.push(holdItem(lane, who, from, to, use.amount, use.low, use.high))
  }
  const clash = !free && (!isFact || uses.some((use, i) => kit?.[i] !== undefined && disturbs(state, kit[i], use, from, to)))
  return { from, to, kit, clash, items }
}

/** What waits already waits somewhere: among other facts if need be, and if need be where something is planned. */
const whereItWaits = (state: State, uses: readonly UseModel[], from: number, to: number): readonly number[] | undefined => {
  if (uses.some((use) => use.kits.length === 0)) return undefined
  return uses.map((use) => use.kits.find((kit) => !disturbs(state, kit, use, from, to)) ?? use.kits[0] ?? 0)
}

/** Would something planned no longer have its place there? */
const disturbs = (state: State, index: number, use: UseModel, from: number, to: number): boolean => {
  const kit = state.model.kits[index]
  const lane = state.kitLanes[index] ?? []
  const planned = lane.filter((item) => isPlanned(state, item))
  if (!kit) return false
  if (
    kit.kind === 'oven' &&
    planned.some(
      (item) => item.from < to + gapBetween(kit, use, item) && from < item.to + gapBetween(kit, item, use) && isApart(use, item),
    )
  )
    return true
  return planned.some((item) => {
    const begins = Math.max(item.from, from)
    const ends = Math.min(item.to, to)
    const moments = [begins, ...lane.map((other) => other.from).filter((moment) => moment > begins && moment < ends)]
    const heldAt = (moment: number) =>
      lane.reduce((sum, other) => (other.from <= moment && other.to > moment ? sum + other.amount : sum), 0)
    return begins < ends && moments.some((moment) => heldAt(moment) + use.amount > kit.capacity)
  })
}

const isApart = (use: UseModel, item: Item): boolean => use.low > item.high || use.high < item.low

const isPlanned = (state: State, item: Item): boolean => {
  const { acts, deliveries } = state.model
  const act = acts[item.who]
  if (act) return !act.fact
  const delivery = deliveries[item.who - acts.length]
  if (delivery) return !delivery.serving.served && !happened(state, delivery)
  return (state.vessels[item.who - acts.length - deliveries.length]?.members ?? []).some((place) => !place.act.fact)
}
