import { RefuseStart } from './refuse-start.ts'

/** Starts, and stops on a signal: exit code 0 after an orderly stop, 1 with a message when it does not start. */
export const runServer = async (start: () => Promise<() => Promise<void>>): Promise<void> => {
  const starting = start()
  let stopping = false
  const stopNow = async () => {
    // A second signal is from somebody who does not want to wait.
    if (stopping) process.exit(1)
    stopping = true
    try {
      const stop = await starting
      await stop()
      process.exit(0)
    } catch (cause) {
      fail(cause)
    }
  }
  // Before anything is awaited: whoever reads that it is up may send the signal in the same moment.
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => void stopNow())
  await starting.catch(fail)
}

const fail = (cause: unknown): never => {
  console.error(cause instanceof RefuseStart ? cause.message : cause)
  process.exit(1)
}
