import { minutesOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type HardWork, hardWork } from '#lib/domain/hard-work.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { atTable } from './missed.ts'
import { type Piece, piecesOf } from './work.ts'

/** A stretch in which a cook is at a step. Milliseconds since 1970. */
interface Doing extends Piece {
  readonly cook: string
  readonly step: string
}

/** What a running order comes to for those who keep house together. Minutes. */
export interface Couple {
  /** Between the first course and the last: no host is at the table; for a plating burst, and beyond that. Null with fewer than two hosts. */
  readonly away: { readonly plating: number; readonly beyond: number } | null
  /** Asked for before the guests come, and what each host does of it all the same. Null when it was not asked for. */
  readonly quiet: {
    readonly minutes: number
    readonly broken: readonly { readonly cook: string; readonly minutes: number }[]
  } | null
  /** Hard work that is with a cook who has had a glass by then, in order of time. */
  readonly glasses: readonly {
    readonly cook: string
    readonly step: string
    readonly start: number
    readonly because: HardWork
  }[]
}

interface Stretch {
  readonly from: number
  readonly to: number
}

const doingsOf = (evening: Evening, order: RunningOrder): readonly Doing[] => {
  const steps = new Map(evening.steps.map((step) => [step.id, step]))
  return order.cues.flatMap((cue) => {
    const step = steps.get(cue.step)
    const pieces = step ? piecesOf(evening, step, cue) : []
    const touches = pieces.filter(({ kind }) => kind === 'touch')
    const whole = pieces.filter(({ kind }) => kind !== 'touch')
    return [
      ...whole.flatMap((piece) => cue.cooks.map((cook) => ({ ...piece, cook, step: cue.step }))),
      ...touches.flatMap((piece, at) => {
        const cook = cue.touches[at]?.cook
        return cook === undefined ? [] : [{ ...piece, cook, step: cue.step }]
      }),
    ]
  })
}

/** In order and apart, within the window. */
const joined = (stretches: readonly Stretch[], { from, to }: Stretch): Stretch[] => {
  const all: Stretch[] = []
  for (const one of stretches.toSorted((a, b) => a.from - b.from)) {
    const cut = { from: Math.max(from, one.from), to: Math.min(to, one.to) }
    const last = all.at(-1)
    if (cut.from >= cut.to) continue
    if (last && cut.from <= last.to) all[all.length - 1] = { from: last.from, to: Math.max(last.to, cut.to) }
    else all.push(cut)
  }
  return all
}

const both = (some: readonly Stretch[], others: readonly Stretch[]): Stretch[] =>
  some.flatMap((a) =>
    others.map((b) => ({ from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) })).filter(({ from, to }) => from < to),
  )

const minutesIn = (stretches: readonly Stretch[]): number => stretches.reduce((sum, { from, to }) => sum + to - from, 0) / 60_000

/** How the order keeps what a couple asks for: one of them at the table, some quiet before, nothing hard after a glass. */
export const coupleOf = (evening: Evening, order: RunningOrder): Couple => {
  const doings = doingsOf(evening, order)
  const hosts = evening.cooks.filter(({ host }) => host).map(({ id }) => id)
  const guests = epochMsOf(evening, evening.guestsFrom)
  return {
    away: hosts.length < 2 ? null : awayOf(evening, order, doings, hosts),
    quiet: quietOf(evening, doings, hosts, guests),
    glasses: glassesOf(evening, doings, guests),
  }
}

const awayOf = (evening: Evening, order: RunningOrder, doings: readonly Doing[], hosts: readonly string[]): Couple['away'] => {
  const window = atTable(evening, order)
  const up = (cook: string) =>
    joined(
      doings.filter((one) => one.cook === cook && !one.atTable),
      window,
    )
  const all = minutesIn(hosts.map(up).reduce(both))
  const beyond = minutesOf(order.allHostsAway)
  return { beyond, plating: Math.max(0, all - beyond) }
}

const quietOf = (evening: Evening, doings: readonly Doing[], hosts: readonly string[], guests: number): Couple['quiet'] => {
  const asked = evening.quietBefore === undefined ? 0 : secondsOf(evening.quietBefore)
  if (asked === 0) return null
  const window = { from: guests - asked * 1000, to: guests }
  const broken = hosts
    .map((cook) => ({
      cook,
      minutes: minutesIn(
        joined(
          doings.filter((one) => one.cook === cook),
          window,
        ),
      ),
    }))
    .filter(({ minutes }) => minutes > 0)
  return { minutes: asked / 60, broken }
}

const glassesOf = (evening: Evening, doings: readonly Doing[], guests: number): Couple['glasses'] => {
  const drinks = new Set(evening.cooks.filter((cook) => cook.drinks).map(({ id }) => id))
  if (drinks.size === 0) return []
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const hard = new Map(
    evening.steps.flatMap((step) => {
      const why = hardWork(step, step.ways, dishes.get(step.dish ?? '') ?? null)
      return why === null ? [] : [[step.id, why] as const]
    }),
  )
  const seen = new Set<string>()
  return doings
    .filter((one) => drinks.has(one.cook) && one.to > guests && one.kind !== 'touch')
    .toSorted((a, b) => a.from - b.from)
    .flatMap(({ cook, step, from }) => {
      const because = hard.get(step)
      if (because === undefined || seen.has(`${cook} ${step}`)) return []
      seen.add(`${cook} ${step}`)
      return [{ cook, step, start: from, because }]
    })
}
