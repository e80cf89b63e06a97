import { type ChildProcess, fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'

/** The next message of the child that has this field. */
const heard = <T>(child: ChildProcess, field: string): Promise<T> =>
  new Promise((resolve, reject) => {
    const hear = (message: unknown) => {
      if (typeof message !== 'object' || message === null || !(field in message)) return
      child.off('message', hear).off('exit', end)
      resolve(Reflect.get(message, field) as T)
    }
    const end = (code: number | null) => reject(new Error(`the server ended with ${code}`))
    child.on('message', hear).on('exit', end)
  })

export interface Served {
  readonly port: number
  /** Processor time of the server so far. */
  readonly cpuMs: () => Promise<number>
}

/** A server of this folder in a process of its own, for as long as `act` takes. */
export const withServer = async <T>(file: string, args: readonly string[], act: (served: Served) => Promise<T>): Promise<T> => {
  const child = fork(fileURLToPath(new URL(file, import.meta.url)), args, { execArgv: ['--import', 'tsx'] })
  const cpuMs = async () => {
    const answer = heard<NodeJS.CpuUsage>(child, 'cpu')
    child.send('cpu')
    const { user, system } = await answer
    return (user + system) / 1000
  }
  try {
    return await act({ port: await heard<number>(child, 'port'), cpuMs })
  } finally {
    const gone = new Promise((resolve) => child.once('exit', resolve))
    child.send('end')
    await gone
  }
}
