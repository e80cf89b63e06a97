import { rmSync } from 'node:fs'
import { build } from 'esbuild'
import { root } from '#server/root.ts'

/** The threads and the solver's process: each is found by its source's name, beside the program that starts it. */
const THREADS = ['server/sync/log-worker.ts', 'server/planner/plan-worker.ts', 'server/planner/prover/solver-process.ts']

/** Puts our own sources together in a folder, packages left where they are: `main` as server.js, and the threads. */
export const bundleProgram = async (main: string, outdir: string): Promise<void> => {
  rmSync(outdir, { recursive: true, force: true })
  await build({
    absWorkingDir: root,
    entryPoints: [{ in: main, out: 'server' }, ...THREADS.map((file) => ({ in: file, out: nameOf(file) }))],
    outdir,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    sourcemap: true,
    logLevel: 'warning',
  })
}

/** What `npm start` runs. */
export const bundleServer = (): Promise<void> => bundleProgram('server/main.ts', `${root}dist`)

const nameOf = (file: string): string => file.replace(/^.*\//, '').replace(/\.ts$/, '')
