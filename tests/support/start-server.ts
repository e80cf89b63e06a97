import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { root } from '#server/root.ts'
import { bundled } from './bundled.ts'

export interface StartedServer {
  /** http://localhost:PORT */
  readonly address: string
  readonly port: number
  readonly pid: number
  readonly dataFolder: string
  /** What it has printed, both streams. */
  readonly output: () => string
  readonly demo: readonly { readonly email: string; readonly password: string }[]
  /** Resolves with the exit code when it is gone; null after SIGKILL. */
  kill(signal?: 'SIGTERM' | 'SIGKILL' | 'SIGINT'): Promise<number | null>
  /** Ends it if need be and removes the data folder. */
  remove(): Promise<void>
}

export interface HowToStart {
  /** "bare": bundled from the source as it is, without the screens. "built": dist/server.js as npm start runs it; build first. */
  readonly kind?: 'bare' | 'built'
  /** A new one under the system's temporary folder when absent. */
  readonly dataFolder?: string
  /** A free one when absent. */
  readonly port?: number
  readonly env?: Readonly<Record<string, string>>
}

/** Starts the real server in a process of its own and waits for the line with its address. Throws with its output when it ends instead. */
export const startServer = async (how: HowToStart = {}): Promise<StartedServer> => {
  const dataFolder = how.dataFolder ?? newDataFolder()
  const port = how.port ?? (await freePort())
  const child = await spawnServer({ ...how, dataFolder, port })
  const gone = goneOf(child)
  let printed = ''
  const ready = new Promise<void>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      printed += chunk.toString()
      if (/^Tableward is at .*\n/m.test(printed)) resolve()
    }
    child.stdout?.on('data', hear)
    child.stderr?.on('data', hear)
    void gone.then((code) => reject(new Error(`the server ended with ${code}:\n${printed}`)))
  })
  await ready
  return {
    address: `http://localhost:${port}`,
    port,
    pid: child.pid ?? 0,
    dataFolder,
    output: () => printed,
    get demo() {
      return [...printed.matchAll(/^Sign in as (\S+) with (\S+)$/gm)].map(([, email = '', password = '']) => ({
        email,
        password,
      }))
    },
    kill: (signal = 'SIGTERM') => {
      child.kill(signal)
      return gone
    },
    remove: async () => {
      child.kill('SIGKILL')
      await gone
      rmSync(dataFolder, { recursive: true, force: true })
    },
  }
}

/** Runs a server that is expected not to start; gives its exit code and what it printed. */
export const failToStart = async (how: HowToStart & { readonly dataFolder: string }) => {
  const child = await spawnServer({ ...how, port: how.port ?? (await freePort()) })
  let output = ''
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (chunk: Buffer) => (output += chunk.toString()))
  const started = new Promise<never>((_, reject) => {
    child.stdout?.on('data', () => {
      if (!/^Tableward is at /m.test(output)) return
      child.kill('SIGKILL')
      reject(new Error(`it started:\n${output}`))
    })
  })
  const code = await Promise.race([goneOf(child), started])
  return { code, output }
}

export const newDataFolder = (): string => mkdtempSync(`${tmpdir()}/tableward-test-`)

const programOf = (kind: 'bare' | 'built'): Promise<string> =>
  kind === 'built' ? Promise.resolve(`${root}dist/server.js`) : bundled('bare-server')

const spawnServer = async ({ kind = 'bare', dataFolder, port, env }: HowToStart): Promise<ChildProcess> =>
  spawn(process.execPath, ['--enable-source-maps', await programOf(kind)], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      PATH: process.env.PATH ?? '',
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
      TZ: 'Europe/London',
      PORT: String(port),
      DATA_DIR: dataFolder,
      ...env,
    },
  })

const goneOf = (child: ChildProcess): Promise<number | null> =>
  new Promise((resolve, reject) => {
    child.on('error', reject)
    // "close": its last words have been read too.
    child.on('close', (code) => resolve(code))
  })

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer()
    server.on('error', reject)
    server.listen(0, () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })
