import { readFileSync } from 'node:fs'
import { runOrder } from './run-order.ts'

// Whoever reads may have had enough: `| head`.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})

const printed = runOrder(process.argv.slice(2), (file) => readFileSync(file === '-' ? 0 : file, 'utf8'))
if (printed.ok) process.stdout.write(printed.value)
else {
  process.stderr.write(`order: ${printed.error}\n`)
  process.exitCode = 2
}
