import { spawn } from 'node:child_process'
import { root } from '#server/root.ts'

/** Runs a program of node in this terminal, hands signals on to it, and gives its exit code. */
export const runNode = (args: readonly string[], env: Readonly<Record<string, string>>): Promise<number> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
    })
    // Ctrl-C reaches the child by itself, being of the same terminal: here it only must not end this process first.
    const handOn = (signal: NodeJS.Signals) => {
      if (signal === 'SIGTERM' || !process.stdin.isTTY) child.kill(signal)
    }
    // npm hands a signal to the shell between us, which dies of it and tells nobody.
    const parent = process.ppid
    const watch = setInterval(() => process.ppid !== parent && child.kill('SIGTERM'), 500)
    if (process.env.npm_lifecycle_event === undefined) clearInterval(watch)
    const signals = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const
    for (const signal of signals) process.on(signal, handOn)
    child.on('error', reject)
    child.on('exit', (code, signal) => {
      clearInterval(watch)
      for (const each of signals) process.off(each, handOn)
      resolve(code ?? (signal === 'SIGINT' ? 130 : 1))
    })
  })
