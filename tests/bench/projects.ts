import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { isProject, projectOf, scheduleOf } from '#lib/scheduling/project/of-problem.ts'
import { spanOf } from '#lib/scheduling/project/project.ts'
import { type ProjectAnswer, solveProject } from '#lib/scheduling/project/solve-project.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { projectProblem } from '#tests/support/project-problem.ts'
import { BadFile, type Instance } from './instance.ts'
import { readJobShop, SHORTEST } from './job-shop.ts'
import { readBest, readProject } from './psplib.ts'
import { readOptima, readProjectMax } from './rcpsp-max.ts'

type Report = (line: string) => void

/** Where the published files are; a part without its folder is not measured. */
export interface Folders {
  readonly psplib?: string
  readonly 'rcpsp-max'?: string
  readonly jobshop?: string
}

/** CPU seconds for each instance. */
const SECONDS = [0.1, 1, 5]
const SEED = 1

/** Published projects as problems of the engine: how far from the shortest length known, and what was proven. */
export const run = (report: Report, folders: Folders): void => {
  if (Object.keys(folders).length === 0) {
    report('Projects: not measured; --psplib DIR, --rcpsp-max DIR and --jobshop DIR say where published ones are')
    return
  }
  report('Projects: length against the best published, one thread, CPU seconds for each instance')
  report(row('set', 's', 'files', 'found', 'gap %', 'most %', 'at best', 'proven', 'unsat', 'rules', 'mean ms'))
  for (const { name, instances } of sets(folders)) {
    for (const instance of instances.slice(0, 3)) measure(instance, 0.2)
    for (const seconds of SECONDS) report(line(name, seconds, instances))
  }
}

const line = (name: string, seconds: number, instances: readonly Instance[]): string => {
  const runs = instances.map((instance) => ({ ...measure(instance, seconds), known: instance.known }))
  const possible = runs.filter(({ known }) => !known.unsat)
  const gaps = possible.flatMap(({ span, known }) => (span && known.best ? [100 * (span / known.best - 1)] : []))
  const impossible = runs.filter(({ known }) => known.unsat)
  const count = (of: readonly boolean[]): number => of.filter(Boolean).length
  return row(
    name,
    String(seconds),
    String(instances.length),
    `${gaps.length}/${possible.length}`,
    (gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length).toFixed(3),
    Math.max(...gaps).toFixed(1),
    String(count(gaps.map((gap) => gap <= 0))),
    String(count(possible.map(({ proof }) => proof === 'optimal'))),
    `${count(impossible.map(({ proof }) => proof === 'infeasible'))}/${impossible.length}`,
    String(runs.reduce((sum, { rules }) => sum + rules, 0)),
    (runs.reduce((sum, { ms }) => sum + ms, 0) / runs.length).toFixed(0),
  )
}

interface Run {
  readonly span: number | undefined
  readonly proof: ProjectAnswer['proof']
  /** Rules that the referee found broken. */
  readonly rules: number
  readonly ms: number
}

const measure = ({ name, project }: Instance, seconds: number): Run => {
  const problem = projectProblem(project)
  if (!isProject(problem)) throw new BadFile(`${name}: not a project of whole, moderate numbers`)
  const begun = cpuMs()
  const stop = () => cpuMs() - begun > 1000 * seconds
  const { starts, proof } = solveProject(projectOf(problem), { steps: Number.MAX_SAFE_INTEGER, seed: SEED, stop })
  const ms = cpuMs() - begun
  const rules = starts ? verify(problem, scheduleOf(problem, starts)).violations.length : 0
  return { span: starts ? spanOf(project, starts) : undefined, proof, rules, ms }
}

const cpuMs = (): number => process.cpuUsage().user / 1000

interface InstanceSet {
  readonly name: string
  readonly instances: readonly Instance[]
}

const sets = (folders: Folders): InstanceSet[] => [
  ...(folders.psplib ? inFolders(folders.psplib, psplibSet) : []),
  ...(folders['rcpsp-max'] ? inFolders(folders['rcpsp-max'], maxSet) : []),
  ...(folders.jobshop ? [jobShops(folders.jobshop)] : []),
]

const inFolders = (folder: string, read: (folder: string, name: string) => InstanceSet): InstanceSet[] => {
  const found = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  if (found.length === 0) throw new BadFile(`${folder}: no folder of instances in it`)
  return found.map(({ name }) => read(join(folder, name), name)).toSorted((a, b) => size(a) - size(b))
}

const size = ({ instances }: InstanceSet): number => instances[0]?.project.lengths.length ?? 0

const psplibSet = (folder: string, set: string): InstanceSet => {
  const list = [`${set}opt.sm`, `${set}hrs.sm`].map((name) => join(folder, name)).find((file) => existsSync(file))
  if (!list) throw new BadFile(`${folder}: neither ${set}opt.sm nor ${set}hrs.sm`)
  const best = readBest(readFileSync(list, 'utf8'))
  return instancesIn(folder, `PSPLIB ${set}`, new RegExp(`^${set}(\\d+_\\d+)\\.sm$`), (text, file, key) => {
    const known = best.get(key)
    return known && { name: file, project: readProject(text, file), known }
  })
}

const maxSet = (folder: string, set: string): InstanceSet => {
  const optima = readOptima(readFileSync(join(folder, 'optimum.csv'), 'utf8'))
  return instancesIn(folder, `RCPSP/max ${set}`, /^(psp\d+\.sch)$/i, (text, file, key) => {
    const known = optima.get(key)
    return known && { name: file, project: readProjectMax(text, file), known }
  })
}

const jobShops = (folder: string): InstanceSet =>
  instancesIn(folder, 'job shop', /^(\w+)\.jss$/, (text, file, key) => {
    const known = SHORTEST[key]
    return known && { name: file, project: readJobShop(text, file), known }
  })

/** Every file of that name with its published length; a set with none is refused. */
const instancesIn = (
  folder: string,
  name: string,
  pattern: RegExp,
  read: (text: string, file: string, key: string) => Instance | undefined,
): InstanceSet => {
  const instances = readdirSync(folder).flatMap((file) => {
    const key = pattern.exec(file)?.[1]
    const instance = key && read(readFileSync(join(folder, file), 'utf8'), join(folder, file), key)
    return instance ? [instance] : []
  })
  if (instances.length === 0) throw new BadFile(`${folder}: no file is like ${pattern.source} and listed with its best length`)
  return { name, instances }
}

const WIDTHS = [18, 5, 7, 9, 9, 8, 9, 8, 8, 7, 9]
const row = (...cells: readonly string[]): string =>
  cells.map((cell, at) => (at === 0 ? cell.padEnd(WIDTHS[at] ?? 0) : cell.padStart(WIDTHS[at] ?? 0))).join('')
