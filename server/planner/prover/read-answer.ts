import type { Kit, Problem } from '#lib/scheduling/problem.ts'
import type { KitUse, Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { serves } from '#lib/scheduling/verify/scene.ts'
import type { Expr, Literal } from './builder.ts'
import type { Part } from './cooks.ts'
import type { KitChoice } from './kit.ts'
import type { Act, Times, Way } from './times.ts'

/** The parts of a model from which a schedule is read. */
export interface Written {
  readonly times: Times
  readonly kit: readonly KitChoice[]
  readonly parts: readonly Part[]
}

/** How many rings are tried in all before no way to tell them apart is said to be known. */
const TRIES = 20_000

/**
 * The schedule that a solution stands for, its rings told apart; null when no way to do so was found. What the model leaves
 * out, it may break: only the verifier knows.
 */
export const readAnswer = (problem: Problem, written: Written, solution: readonly number[]): Schedule | null => {
  const read = ({ terms, offset }: Expr): number =>
    [...terms].reduce((total, [variable, times]) => total + times * (solution[variable] ?? 0), offset)
  const holds = (literal: Literal): boolean => (literal >= 0 ? solution[literal] === 1 : solution[-literal - 1] !== 1)
  const cooksOf = (parts: readonly Part[]): string[] =>
    parts.flatMap(({ by }) => by.filter(({ does }) => holds(does)).map(({ cook }) => cook.id))
  const chosenKit = (of: { readonly act?: Act; readonly dish?: unknown }, at: number): string | undefined =>
    written.kit
      .filter((one) => one.at === at && (of.act ? one.act === of.act : one.dish === of.dish && of.dish !== undefined))
      .flatMap(({ options }) => options.filter(({ on }) => holds(on)))[0]?.kit.id

  const pans: Pan[] = []
  const placements = written.times.acts.map((act): Draft => {
    const way = act.ways.find(({ chosen }) => holds(chosen)) as Way
    const [start, end, holdEnd] = [read(act.start), read(act.end), read(way.holdEnd)]
    const own = written.parts.filter((part) => part.act === act && part.way === way)
    const kit = way.mode.uses.map((use, at): KitUse => {
      const held = { id: chosenKit({ act }, at) ?? '', unit: 0 }
      if (use.kind === 'ring')
        pans.push({ held, size: use.size, place: act.activity.place, from: start, to: holdEnd, vessel: act.activity.vessel })
      return held
    })
    return {
      activity: act.activity.id,
      mode: way.index,
      start,
      end,
      cooks: cooksOf(own.filter(({ kind }) => kind !== 'touch')),
      kit,
      touches: way.touches.map(({ touch, at }, index) => ({
        touch,
        at: read(at),
        cook: cooksOf(own.filter((part) => part.touch === index))[0] ?? '',
      })),
    }
  })
  const keeping = written.times.dishes.flatMap((dish) => {
    const { delivery, course } = dish
    const from = Math.max(
      ...placements.filter(({ activity }) => dish.acts.some((act) => act.activity.id === activity)).map(({ end }) => end),
    )
    const to = Math.max(from, read(course.moment) - delivery.early)
    if (from === to) return []
    const kit = delivery.keeps.uses.map((use, at): KitUse => {
      const held = { id: chosenKit({ dish }, at) ?? '', unit: 0 }
      if (use.kind === 'ring') pans.push({ held, size: use.size, place: delivery.keeps.place, from, to, vessel: undefined })
      return held
    })
    return [{ delivery: delivery.id, from, to, kit }]
  })
  if (!tellApart(problem.kit, pans)) return null
  return {
    placements: placements.sort((a, b) => a.start - b.start || (a.activity < b.activity ? -1 : 1)),
    servings: written.times.courses.map(({ serving, moment }) => ({ serving: serving.id, toTable: read(moment) })),
    keeping,
    left: [],
  }
}

type Draft = Placement

/** Something on a ring. `held` is filled in. */
interface Pan {
  readonly held: { id: string; unit: number }
  readonly size: number
  readonly place: string
  readonly from: number
  readonly to: number
  readonly vessel: string | undefined
}

/** Gives each pan, and each vessel as a whole, a ring of its own for its time: in order of start, smallest ring first. */
const tellApart = (kit: readonly Kit[], pans: readonly Pan[]): boolean => {
  const vessels = new Map<string, Pan[]>()
  for (const [index, pan] of pans.entries()) {
    const key = pan.vessel === undefined ? `alone ${index}` : `${pan.place} ${pan.vessel}`
    vessels.set(key, [...(vessels.get(key) ?? []), pan])
  }
  const jobs = [...vessels.values()]
    .map((members) => ({
      members,
      size: Math.max(...members.map(({ size }) => size)),
      place: members[0]?.place ?? '',
      from: Math.min(...members.map(({ from }) => from)),
      to: Math.max(...members.map(({ to }) => to)),
    }))
    .sort((a, b) => a.from - b.from || b.size - a.size)
  const rings = kit
    .flatMap((one) => (one.kind === 'ring' ? Array.from({ length: one.count }, (_, unit) => ({ kit: one, unit })) : []))
    .sort((a, b) => a.kit.size - b.kit.size)
  const taken = rings.map((): { from: number; to: number }[] => [])
  let tries = 0
  const place = (at: number): boolean => {
    const job = jobs[at]
    if (!job) return true
    for (const [index, { kit: ring, unit }] of rings.entries()) {
      if (!serves(ring, unit, { kind: 'ring', size: job.size }, job.place)) continue
      const spans = taken[index] ?? []
      if (spans.some(({ from, to }) => Math.max(from, job.from) < Math.min(to, job.to))) continue
      tries += 1
      if (tries > TRIES) return false
      spans.push(job)
      if (place(at + 1)) {
        for (const { held } of job.members) Object.assign(held, { id: ring.id, unit })
        return true
      }
      spans.pop()
    }
    return false
  }
  return place(0)
}
