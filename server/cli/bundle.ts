import { rmSync } from 'node:fs'
import { build } from 'esbuild'
import { root } from '#server/root.ts'

/** The programs of the server: the process and its threads. server/worker-file.ts finds dist/NAME.js by the source's name. */
const ENTRIES = ['server/main.ts', 'server/sync/log-worker.ts', 'server/planner/plan-worker.ts']

/** Puts our own sources together in dist/, packages left where they are. */
export const bundleServer = async (): Promise<void> => {
  rmSync(`${root}dist`, { recursive: true, force: true })
  await build({
    absWorkingDir: root,
    entryPoints: ENTRIES.map((file) => ({ in: file, out: file === 'server/main.ts' ? 'server' : nameOf(file) })),
    outdir: 'dist',
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    sourcemap: true,
    logLevel: 'warning',
  })
}

const nameOf = (file: string): string => file.replace(/^.*\//, '').replace(/\.ts$/, '')
