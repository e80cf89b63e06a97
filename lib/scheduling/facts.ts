import { placeOf } from './fits.ts'
import { kitsFor } from './kit-fits.ts'
import { laneBlocks, stayBlocks } from './lane-fits.ts'
import type { Act, CookModel, ModeModel } from './model.ts'
import { put, type State, type TouchPlace } from './state.ts'
import { touchesToCome } from './touches-to-come.ts'

/** Puts what has happened where it happened, done things first. Post: every fact is placed and is never taken away. */
export const putFacts = (state: State): void => {
  const facts = state.model.acts.filter((act) => act.fact)
  facts.sort((a, b) => (a.fact?.start ?? 0) - (b.fact?.start ?? 0) || a.index - b.index)
  for (const act of facts) {
    const mode = act.modes[0]
    if (mode) putFact(state, act, mode)
  }
}

const putFact = (state: State, act: Act, mode: ModeModel): void => {
  const { fact } = act
  if (!fact) return
  const { start } = fact
  const end = start + act.minLen
  const cooks = (fact.cooks ?? []).flatMap((id) => state.model.cooks.find((cook) => cook.id === id) ?? [])
  const { touches, missing } = fact.kind === 'running' ? placeTouches(state, act, mode, start, end) : { touches: [], missing: 0 }
  const wanting = {
    who: act.index,
    uses: mode.uses,
    from: start,
    to: end,
    touches: touches.map((touch) => touch.at),
    vessel: act.vessel,
    isActivity: true,
  }
  const free = kitsFor(state, wanting)
  const kit = free?.kit ?? anyKit(state, act, mode)
  const vesselKit = free?.vesselKit ?? (kit.includes(-1) ? anyRing(state, act, mode) : -1)
  put(state, { ...placeOf(act, mode, cooks, start, end, touches, kit, vesselKit), missing })
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

/** The touches still to come, each by whoever is free first. */
const placeTouches = (
  state: State,
  act: Act,
  mode: ModeModel,
  start: number,
  end: number,
): { touches: TouchPlace[]; missing: number } => {
  const windows = touchesToCome(act.activity.modes[mode.index] ?? NO_TOUCHES, start, end, state.model.problem.now)
  const touches: TouchPlace[] = []
  for (const { touch, lo, hi, takes } of windows) {
    const found = firstFree(state, act, touches, lo, hi, takes)
    if (found) touches.push({ touch, takes, ...found })
  }
  return { touches, missing: windows.length - touches.length }
}
const NO_TOUCHES = { touches: [] }

const firstFree = (
  state: State,
  act: Act,
  chosen: readonly TouchPlace[],
  lo: number,
  hi: number,
  takes: number,
): { at: number; cook: CookModel } | undefined => {
  for (let at = lo; at <= hi; at++)
    for (const cook of state.model.cooks) {
      if (stayBlocks(state, act.touchStays[cook.index] ?? [], at, takes)) continue
      if (laneBlocks(state, state.cookLanes[cook.index] ?? [], 'hands', act.spot, takes <= 20, at, takes)) continue
      if (chosen.some((other) => other.cook === cook && other.at < at + takes && other.at + other.takes > at)) continue
      return { at, cook }
    }
  return undefined
}
