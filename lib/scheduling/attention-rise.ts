import { type Attention, awayOf, isAway, markPiece, markPlating } from './attention.ts'
import type { CookModel, ModeModel } from './model.ts'
import { CALM_HOUR, type Tick, type Weights } from './problem.ts'
import type { Trial } from './scratch.ts'

/** By how much the price of attention rises when the trial is put there. Pre: it is not. */
export const attentionRise = (attention: Attention, weights: Weights, trial: Trial): number => {
  if (!matters(attention, trial)) return 0
  const { team, start, end } = trial
  const { care } = trial.mode as ModeModel
  const up = !trial.act?.atTable
  let sum = 0
  if (care !== 'leave')
    for (let i = 0; i < team.length; i++)
      sum += pieceRise(attention, weights, team[i] as CookModel, start, end, up, care === 'hands-on')
  for (let i = 0; i < trial.touches; i++) {
    const cook = trial.cook[i] as CookModel
    const at = trial.at[i] as Tick
    const to = at + (trial.takes[i] as number)
    sum += calmRise(attention, weights, cook, at, to)
    // Whoever keeps an eye on it is up already.
    if (up) sum += missedRise(attention, weights, cook, care === 'eye' && team.includes(cook) ? Math.max(at, end) : at, to)
  }
  return sum + unfairRise(attention, weights) + (attention.hosts > 0 ? awayRise(attention, weights, trial, up) : 0)
}

/** Does the trial meet the hour before the first serving or the window itself? */
const matters = (attention: Attention, trial: Trial): boolean => {
  let to = trial.end
  for (let i = 0; i < trial.touches; i++) to = Math.max(to, (trial.at[i] as Tick) + (trial.takes[i] as number))
  return reaches(attention, trial.start, to)
}

const reaches = ({ base, first, last }: Attention, from: Tick, to: Tick): boolean =>
  to - base > first - CALM_HOUR && from - base < last

/** What a team surely costs the table, whoever touches what; a lower bound. */
export const teamRise = (
  attention: Attention,
  weights: Weights,
  team: readonly CookModel[],
  from: Tick,
  to: Tick,
  up: boolean,
  hand: boolean,
): number => {
  if (!reaches(attention, from, to)) return 0
  let sum = 0
  for (let i = 0; i < team.length; i++) {
    const cook = team[i] as CookModel
    sum += pieceRise(attention, weights, cook, from, to, up, hand)
    attention.more[cook.index] = 0
  }
  return sum
}

/** What a touch costs the table alone, but for fairness. */
export const touchRise = (attention: Attention, weights: Weights, cook: CookModel, from: Tick, to: Tick, up: boolean): number => {
  if (!reaches(attention, from, to)) return 0
  const sum = calmRise(attention, weights, cook, from, to)
  if (!up) return sum
  const missed = missedRise(attention, weights, cook, from, to)
  attention.more[cook.index] = 0
  return sum + missed + (cook.host ? weights.allAway * newlyAway(attention, cook, from, to) : 0)
}

const pieceRise = (
  attention: Attention,
  weights: Weights,
  cook: CookModel,
  from: Tick,
  to: Tick,
  up: boolean,
  hand: boolean,
): number => (hand ? calmRise(attention, weights, cook, from, to) : 0) + (up ? missedRise(attention, weights, cook, from, to) : 0)

/** Ticks newly busy in the hour before the window, priced. */
const calmRise = (attention: Attention, weights: Weights, cook: CookModel, from: Tick, to: Tick): number => {
  const { base, first } = attention
  const hand = attention.hand[cook.index] as Uint8Array
  const end = Math.min(first, to - base)
  let sum = 0
  for (let t = Math.max(0, first - CALM_HOUR, from - base); t < end; t++) if (hand[t] === 0) sum++
  return weights.calm * sum
}

/** Ticks newly missed in the window, priced, and remembered in `more` for what is fair. */
const missedRise = (attention: Attention, weights: Weights, cook: CookModel, from: Tick, to: Tick): number => {
  if (!cook.eats) return 0
  const { base, eating, more } = attention
  const up = attention.up[cook.index] as Uint8Array
  const end = Math.min(attention.last, to - base)
  let missed = 0
  let meal = 0
  for (let t = Math.max(attention.first, from - base); t < end; t++)
    if (up[t] === 0) {
      missed++
      meal += eating[t] as number
    }
  more[cook.index] = (more[cook.index] as number) + missed
  return weights.missed * missed + weights.meal * meal
}

/** What `more` adds to the most that one cook misses; it is zero again afterwards. */
const unfairRise = (attention: Attention, weights: Weights): number => {
  const { more, missed, eats } = attention
  let before = 0
  let after = 0
  for (let cook = 0; cook < more.length; cook++) {
    if (!eats[cook]) continue
    const own = missed[cook] as number
    if (own > before) before = own
    if (own + (more[cook] as number) > after) after = own + (more[cook] as number)
    more[cook] = 0
  }
  return weights.unfair * (after - before)
}

/** How many of [from, to) would newly leave no host at the table. */
const newlyAway = (attention: Attention, cook: CookModel, from: Tick, to: Tick): number => {
  const { base, hosts, hostsUp } = attention
  const up = attention.up[cook.index] as Uint8Array
  const end = Math.min(attention.last, to - base)
  let sum = 0
  for (let t = Math.max(attention.first, from - base); t < end; t++) if (up[t] === 0 && (hostsUp[t] as number) + 1 >= hosts) sum++
  return sum
}

/** Priced by putting it there for a moment where all hosts could newly be away, or a stretch of that be excused. */
const awayRise = (attention: Attention, weights: Weights, trial: Trial, up: boolean): number => {
  if (!mayChangeAway(attention, trial, up)) return 0
  const before = awayOf(attention)
  markTrial(attention, trial, up, 1)
  const after = awayOf(attention)
  markTrial(attention, trial, up, -1)
  attention.away = before
  attention.isStale = false
  return weights.allAway * (after - before)
}

const mayChangeAway = (attention: Attention, trial: Trial, up: boolean): boolean => {
  const { team, start, end } = trial
  if (trial.act?.activity.plating && hasAway(attention, start, end)) return true
  if (!up) return false
  let hosts = 0
  if (trial.mode?.care !== 'leave')
    for (let i = 0; i < team.length; i++) {
      const cook = team[i] as CookModel
      if (!cook.host) continue
      if (newlyAway(attention, cook, start, end) > 0) return true
      hosts++
    }
  for (let i = 0; i < trial.touches; i++) {
    const cook = trial.cook[i] as CookModel
    if (!cook.host) continue
    if (newlyAway(attention, cook, trial.at[i] as Tick, (trial.at[i] as Tick) + (trial.takes[i] as number)) > 0) return true
    hosts++
  }
  return hosts > 1 && attention.hosts > 1
}

const hasAway = (attention: Attention, from: Tick, to: Tick): boolean => {
  const end = Math.min(attention.last, to - attention.base)
  for (let t = Math.max(attention.first, from - attention.base); t < end; t++) if (isAway(attention, t)) return true
  return false
}

const markTrial = (attention: Attention, trial: Trial, up: boolean, by: 1 | -1): void => {
  const { team, start, end } = trial
  const hand = trial.mode?.care === 'hands-on'
  if (trial.mode?.care !== 'leave')
    for (let i = 0; i < team.length; i++) markPiece(attention, team[i] as CookModel, start, end, hand, up, by)
  for (let i = 0; i < trial.touches; i++) {
    const at = trial.at[i] as Tick
    markPiece(attention, trial.cook[i] as CookModel, at, at + (trial.takes[i] as number), true, up, by)
  }
  if (trial.act?.activity.plating) markPlating(attention, start, end, by)
}
