import { readdirSync, rmSync } from 'node:fs'
import { build } from 'esbuild'
import { root } from '#server/root.ts'

/** The threads and the solver's process: each is found by its source's name, beside the program that starts it. */
const THREADS = [
  'server/sync/log-worker.ts',
  'server/planner/plan-worker.ts',
  'server/planner/prover/solver-process.ts',
  'server/backup/copy-worker.ts',
]

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

/** The scripts, styles and fonts of the screens as they were built; letters of other scripts are left to be fetched when they are met. */
const staticFiles = (): readonly string[] =>
  readdirSync(`${root}.next/static`, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(js|css)$|-latin-[^e][^/]*\.woff2$/.test(path))
    .map((path) => `/_next/static/${path.replaceAll('\\', '/')}`)
    .sort()

/**
 * Puts the service worker together, once the screens are built. `made`: what the build was made of; another one drops what was
 * kept for this one.
 */
export const bundleServiceWorker = async (made: string): Promise<void> => {
  await build({
    absWorkingDir: root,
    entryPoints: ['app/_worker/service-worker.ts'],
    outfile: `${root}dist/service-worker.js`,
    bundle: true,
    minify: true,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    define: {
      BUILD: JSON.stringify(made.slice(0, 12)),
      STATIC: JSON.stringify(staticFiles()),
      'process.env.NODE_ENV': '"production"',
    },
    logLevel: 'warning',
  })
}

const nameOf = (file: string): string => file.replace(/^.*\//, '').replace(/\.ts$/, '')
