import type { Project, ProjectLag } from '#lib/scheduling/project/project.ts'
import { BadFile, type Known, wholeNumbers } from './instance.ts'

/**
 * Reads a project with minimum and maximum lags (.sch of ProGen/max): Kolisch, Schwindt, Sprecher 1999, "Benchmark instances for
 * project scheduling problems". The first and the last activity are dummies: what lags behind the first is a `from`, what it lags
 * behind a `to`; a lag to the last one is at most the activity's length, so that it is over when all are.
 */
export const readProjectMax = (text: string, file: string): Project => {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '')
  const [count, stores, nonrenewable] = wholeNumbers(lines[0] ?? '', file)
  if (count === undefined || stores === undefined)
    throw new BadFile(`${file}: begins without the numbers of activities and stores`)
  if (nonrenewable !== 0) throw new BadFile(`${file}: has stores that do not fill again`)
  const last = count + 1
  if (lines.length < 2 * count + 6) throw new BadFile(`${file}: ends after ${lines.length} lines`)
  const arcs = lines.slice(1, count + 3).map((line) => wholeNumbers(line.replace(/[[\]]/g, ' '), file))
  const work = lines.slice(count + 3, 2 * count + 5).map((line) => wholeNumbers(line, file))
  const capacities = wholeNumbers(lines[2 * count + 5] ?? '', file)
  if (capacities.length !== stores) throw new BadFile(`${file}: ${capacities.length} capacities for ${stores} stores`)
  const lengths = Int32Array.from({ length: count }, (_, i) => work[i + 1]?.[2] ?? Number.NaN)
  const from = new Int32Array(count)
  const late = new Int32Array(count).fill(2 ** 30)
  const lags: ProjectLag[] = []
  arcs.forEach((line, at) => {
    const [activity, modes, many = 0, ...rest] = line
    if (activity !== at || modes !== 1 || rest.length !== 2 * many)
      throw new BadFile(`${file}: "${line.join(' ')}" is not activity ${at} in one mode with its lags`)
    for (let k = 0; k < many; k++) {
      const to = rest[k] as number
      const least = rest[many + k] as number
      if (at === last || (to === last && (at === 0 ? least > 0 : least > (lengths[at - 1] as number))))
        throw new BadFile(`${file}: the lag ${at} to ${to} is more than "over when all are"`)
      if (to === last) continue
      if (at === 0) from[to - 1] = Math.max(from[to - 1] as number, least)
      else if (to === 0) late[at - 1] = Math.min(late[at - 1] as number, -least)
      else lags.push({ from: at - 1, to: to - 1, least })
    }
  })
  const horizon = longest(lengths, from, lags)
  return {
    lengths,
    lags,
    from,
    to: late.map((start, i) => Math.min(start, horizon) + (lengths[i] as number)),
    stores: capacities.map((capacity, store) => ({
      capacity,
      needs: Int32Array.from(lengths, (_, i) => work[i + 1]?.[3 + store] ?? Number.NaN),
    })),
  }
}

/** Where there is a schedule there is one no longer than this: no activity need wait longer than its own length or a lag. */
const longest = (lengths: Int32Array, from: Int32Array, lags: readonly ProjectLag[]): number => {
  const wait = lengths.slice()
  for (const { from, least } of lags) wait[from] = Math.max(wait[from] as number, least)
  return Math.max(0, ...from) + wait.reduce((sum, ticks) => sum + ticks, 0)
}

/** optimum.csv: "file,value", "file,least..best" or "file,unsat". */
export const readOptima = (text: string): ReadonlyMap<string, Known> => {
  const found = new Map<string, Known>()
  for (const line of text.split(/\r?\n/)) {
    const [, file, unsat, least, best] = /^(\S+),(?:(unsat)|(\d+)(?:\.\.(\d+))?)$/.exec(line.trim()) ?? []
    if (!file) continue
    found.set(file, unsat ? { unsat: true } : { unsat: false, least: Number(least), best: Number(best ?? least) })
  }
  return found
}
