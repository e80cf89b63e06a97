import type { Project, ProjectLag, ProjectStore } from '#lib/scheduling/project/project.ts'
import { BadFile, type Known, wholeNumbers } from './instance.ts'

/**
 * Reads a project of PSPLIB's single-mode sets (.sm): Kolisch & Sprecher 1996, "PSPLIB - A project scheduling problem library",
 * EJOR 96:205-216. The first and the last job are dummies and left out.
 */
export const readProject = (text: string, file: string): Project => {
  const lines = text.split(/\r?\n/)
  const jobs = number(lines, /^jobs .*:\s*(\d+)/, file)
  if (number(lines, /- nonrenewable\s*:\s*(\d+)/, file) > 0) throw new BadFile(`${file}: has stores that do not fill again`)
  const successors = table(lines, 'PRECEDENCE RELATIONS', 1, jobs, file)
  const requests = table(lines, 'REQUESTS/DURATIONS', 2, jobs, file)
  const [capacities] = table(lines, 'RESOURCEAVAILABILITIES', 1, 1, file)
  if (!capacities) throw new BadFile(`${file}: no capacities`)
  const real = requests.slice(1, -1)
  for (const [at, [, modes]] of successors.entries())
    if (modes !== 1) throw new BadFile(`${file}: job ${at + 1} has not one mode`)
  const lengths = Int32Array.from(real, ([, , length]) => length ?? Number.NaN)
  const lags: ProjectLag[] = successors.flatMap(([job, , count, ...after]) => {
    if (job === undefined || after.length !== count) throw new BadFile(`${file}: job ${job} does not have ${count} successors`)
    return after.filter((to) => job > 1 && to < jobs).map((to) => ({ from: job - 2, to: to - 2, least: lengths[job - 2] ?? 0 }))
  })
  const stores: ProjectStore[] = capacities.map((capacity, store) => ({
    capacity,
    needs: Int32Array.from(real, (line) => line[3 + store] ?? Number.NaN),
  }))
  return {
    lengths,
    lags,
    stores,
    from: new Int32Array(lengths.length),
    to: new Int32Array(lengths.length).fill(lengths.reduce((sum, length) => sum + length, 0)),
  }
}

const number = (lines: readonly string[], pattern: RegExp, file: string): number => {
  for (const line of lines) {
    const found = pattern.exec(line)
    if (found) return Number(found[1])
  }
  throw new BadFile(`${file}: no line is like ${pattern.source}`)
}

/** `count` lines of numbers that stand `below` lines under their heading. */
const table = (lines: readonly string[], heading: string, below: number, count: number, file: string): number[][] => {
  const at = lines.findIndex((line) => line.startsWith(heading))
  if (at < 0) throw new BadFile(`${file}: no ${heading}`)
  const first = at + below + 1
  const rows = lines
    .slice(first, first + count)
    .filter((line) => line.trim() !== '')
    .map((line) => wholeNumbers(line, file))
  if (rows.length < count) throw new BadFile(`${file}: ${heading} ends after ${rows.length} lines`)
  return rows
}

/** "Parameter Instance Makespan" lines of the published lists (j30opt, j60hrs, j120hrs): parameter_instance → best length. */
export const readBest = (text: string): ReadonlyMap<string, Known> => {
  const found = new Map<string, Known>()
  for (const line of text.split(/\r?\n/)) {
    const [, parameter, instance, best] = /^\s*(\d+)\s+(\d+)\s+(\d+)\b/.exec(line) ?? []
    if (best) found.set(`${parameter}_${instance}`, { unsat: false, best: Number(best) })
  }
  return found
}
