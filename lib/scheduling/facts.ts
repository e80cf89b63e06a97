import { holdEndOf, placeOf } from './fits.ts'
import { refreshKeep } from './keeping.ts'
import { kitsFor, type Wanting } from './kit-fits.ts'
import { laneBlocks, stayBlocks } from './lane-fits.ts'
import type { Act, CookModel, ModeModel } from './model.ts'
import type { Place, TouchPlace } from './place.ts'
import { EYE_PIECE } from './problem.ts'
import type { Random } from './random.ts'
import { put, type State, take } from './state.ts'
import { touchesToCome } from './touches-to-come.ts'

/**
 * Puts what has happened where it happened, then finds hands for the touches to come, when it is known what every cook is
 * at. Post: every fact is placed and is never taken away.
 */
export const putFacts = (state: State): void => {
  const facts = state.model.acts.filter((act) => act.fact)
  facts.sort((a, b) => (a.fact?.start ?? 0) - (b.fact?.start ?? 0) || a.index - b.index)
  for (const act of facts) {
    const mode = act.modes[0]
    if (mode) putFact(state, act, mode, NOTHING_TO_COME)
  }
  for (const act of facts) {
    const mode = act.modes[0]
    if (!mode || act.fact?.kind !== 'running' || mode.touches.length === 0) continue
    take(state, act)
    putFact(state, act, mode, placeTouches(state, act, mode, act.fact.start + act.minLen))
  }
}

const putFact = (state: State, act: Act, mode: ModeModel, { touches, missing }: ToCome): void => {
  if (!act.fact) return
  const end = act.fact.start + act.minLen
  const free = kitsFor(state, wantingOf(state, act, mode, touches, end))
  const kit = free?.kit ?? anyKit(state, act, mode)
  const vesselKit = free?.vesselKit ?? (kit.includes(-1) ? anyRing(state, act, mode) : -1)
  put(state, { ...placeOf(act, mode, attending(state, act), act.fact.start, end, touches, kit, vesselKit), missing })
}

interface ToCome {
  readonly touches: readonly TouchPlace[]
  readonly missing: number
}
const NOTHING_TO_COME: ToCome = { touches: [], missing: 0 }

const attending = (state: State, act: Act): CookModel[] =>
  (act.fact?.cooks ?? []).flatMap((id) => state.model.cooks.find((cook) => cook.id === id) ?? [])

/** What happened on a kit before now is over: only from now on must what is under way, and what its pan still does, have room. */
const wantingOf = (state: State, act: Act, mode: ModeModel, touches: readonly TouchPlace[], end: number): Wanting => {
  const { now } = state.model.problem
  const holdEnd = holdEndOf(mode, touches, end)
  const to = now !== undefined && act.vessel >= 0 ? Math.max(holdEnd, now + 1) : holdEnd
  return {
    who: act.index,
    uses: mode.uses,
    from: Math.min(to, Math.max(act.fact?.start ?? act.from, now ?? act.from)),
    to,
    touches: touches.map((touch) => touch.at),
    vessel: act.vessel,
    isActivity: true,
  }
}

/** Tries another end and other hands for something under way; it stays as it was when there is no kit for that. */
export const resettle = (state: State, act: Act, random: Random): void => {
  const place = state.places[act.index]
  const { fact } = act
  if (!place || fact?.kind !== 'running') return
  const { mode } = place
  const end = anEnd(state, place, random)
  take(state, act)
  if (act.delivery) refreshKeep(state, act.delivery)
  const { touches, missing } = placeTouches(state, act, mode, end, random)
  const free = kitsFor(state, wantingOf(state, act, mode, touches, end))
  const again = free && placeOf(act, mode, place.team, fact.start, end, touches, free.kit, free.vesselKit)
  put(state, again ? { ...again, missing } : place)
  if (act.delivery) refreshKeep(state, act.delivery)
}

/**
 * Its earliest end or, when it may last longer by choice, one that suits what comes after it: what is planned after it must
 * still keep its hard lags.
 */
const anEnd = (state: State, { act, mode, end }: Place, random: Random): number => {
  const start = act.fact?.start ?? act.from
  let least = start + act.minLen
  let most = mode.upTo > mode.likely ? Math.max(least, start + mode.upTo) : least
  const { delivery } = act
  if (delivery && !delivery.serving.served) most = Math.min(most, (state.moments[delivery.serving.index] ?? most) + delivery.late)
  const ends = [least]
  for (const lag of act.succs) {
    const after = state.places[lag.to.index]
    if (!after || !lag.fromEnd) continue
    most = Math.min(most, after.start - lag.least)
    if (lag.safety) least = Math.max(least, after.start - lag.most)
    ends.push(after.start - lag.least, after.start - lag.most)
  }
  ends.push(most)
  return least > most ? end : Math.max(least, Math.min(most, ends[random.below(ends.length)] ?? least))
}

const anyRing = (state: State, act: Act, mode: ModeModel): number => {
  const held = state.vessels[act.vessel]
  if (held?.item) return held.kit
  return mode.uses.find((use) => use.kind === 'ring')?.kits[0] ?? -1
}

/** Where nothing is free, something that could have served; nothing at all when a use has none. */
const anyKit = (state: State, act: Act, mode: ModeModel): number[] => {
  if (mode.uses.some((use) => use.kits.length === 0)) return []
  const first = act.vessel >= 0 ? mode.uses.findIndex((use) => use.kind === 'ring') : -1
  const taken = new Set<number>(first >= 0 ? [anyRing(state, act, mode)] : [])
  return mode.uses.map((use, i) => {
    if (i === first) return -1
    const kit = use.kits.find((one) => use.kind !== 'ring' || !taken.has(one)) ?? use.kits[0] ?? 0
    taken.add(kit)
    return kit
  })
}

/** The touches still to come, each by whoever is free: the first there is or, when given dice, any. */
const placeTouches = (state: State, act: Act, mode: ModeModel, end: number, random?: Random): ToCome => {
  const start = act.fact?.start ?? act.from
  const windows = touchesToCome(act.activity.modes[mode.index] ?? { touches: [] }, start, end, state.model.problem.now)
  const touches: TouchPlace[] = []
  for (const { touch, lo, hi, takes } of windows) {
    const free = whoIsFree(state, act, touches, lo, hi, takes)
    const found = free[random ? random.below(free.length) : 0]
    if (found) touches.push({ touch, takes, ...found })
  }
  return { touches, missing: windows.length - touches.length }
}

const whoIsFree = (
  state: State,
  act: Act,
  chosen: readonly TouchPlace[],
  lo: number,
  hi: number,
  takes: number,
): { at: number; cook: CookModel }[] => {
  const free: { at: number; cook: CookModel }[] = []
  for (let at = lo; at <= hi; at++)
    for (const cook of state.model.cooks) {
      if (stayBlocks(state, act.touchStays[cook.index] ?? [], at, takes)) continue
      if (laneBlocks(state, state.cookLanes[cook.index] ?? [], 'hands', act.spot, takes <= EYE_PIECE, at, takes)) continue
      if (chosen.some((other) => other.cook === cook && other.at < at + takes && other.at + other.takes > at)) continue
      free.push({ at, cook })
    }
  return free
}
