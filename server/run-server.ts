import { RefuseStart } from './refuse-start.ts'

/** Starts, and stops on a signal: exit code 0 after an orderly stop, 1 with a message when it does not start. */
export const runServer = async (start: () => Promise<() => Promise<void>>): Promise<void> => {
  try {
    const stop = await start()
    let stopping = false
    for (const signal of ['SIGTERM', 'SIGINT'] as const)
      process.on(signal, () => {
        // A second signal is from somebody who does not want to wait.
        if (stopping) process.exit(1)
        stopping = true
        stop().then(
          () => process.exit(0),
          (cause: unknown) => {
            console.error(cause)
            process.exit(1)
          },
        )
      })
  } catch (cause) {
    if (cause instanceof RefuseStart) console.error(cause.message)
    else console.error(cause)
    process.exit(1)
  }
}
