import { Worker, type WorkerOptions } from 'node:worker_threads'

const running = new URL(import.meta.url)

/** Node's tsx does not reach into worker threads by itself: the thread registers it and then loads the source. */
const fromSource = (source: string): URL => {
  const tsx = JSON.stringify(import.meta.resolve('tsx/esm/api'))
  const entry = JSON.stringify(new URL(`./${source}`, running).href)
  const code = `import { register } from ${tsx}; register(); await import(${entry})`
  return new URL(`data:text/javascript,${encodeURIComponent(code)}`)
}

const fromBundle = (source: string): URL => new URL(`./${source.replace(/^.*\//, '').replace(/\.ts$/, '.js')}`, running)

/**
 * Starts a worker thread. `source` is its file within server/, such as "planner/plan-worker.ts". Under tsx and vitest the
 * source runs; in the bundle, the file of the same name beside dist/server.js: "dist/plan-worker.js".
 */
export const startWorker = (source: string, options: WorkerOptions = {}): Worker =>
  running.pathname.endsWith('.ts')
    ? new Worker(fromSource(source), { execArgv: [], ...options })
    : new Worker(fromBundle(source), options)
