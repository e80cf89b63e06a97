import { parseArgs } from 'node:util'
import { run as engine } from './engine.ts'
import { run as lighthouse } from './lighthouse.ts'
import { run as night } from './night.ts'
import { run as planner } from './planner.ts'
import { run as projects } from './projects.ts'
import { run as screens } from './screens.ts'
import { run as sync } from './sync.ts'

type Report = (line: string) => void

const { values: given, positionals: asked } = parseArgs({
  allowPositionals: true,
  options: { psplib: { type: 'string' }, 'rcpsp-max': { type: 'string' }, jobshop: { type: 'string' }, runs: { type: 'string' } },
})

/**
 * What is measured, in this order. `npm run bench -- engine` measures that part alone; `--psplib DIR --rcpsp-max DIR --jobshop DIR`
 * measure published projects that lie there, `--runs 1` lets Lighthouse look once. Figures, no verdict.
 */
const PARTS: Readonly<Record<string, (report: Report) => void | Promise<void>>> = {
  engine,
  sync,
  night,
  planner,
  screens,
  lighthouse: (report) => lighthouse(report, Number(given.runs ?? 5)),
  projects: (report) => projects(report, given),
}

const unknown = asked.filter((name) => !(name in PARTS))
if (unknown.length > 0) {
  console.error(`no part of the bench is called ${unknown.join(', ')}; there are ${Object.keys(PARTS).join(', ')}`)
  process.exit(2)
}
for (const [name, part] of Object.entries(PARTS)) {
  if (asked.length > 0 && !asked.includes(name)) continue
  await part(console.log)
  console.log('')
}
