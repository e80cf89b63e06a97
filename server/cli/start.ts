import { make } from './make.ts'
import { runNode } from './run.ts'

const made = await make(console.log)
process.exitCode = made === 0 ? await runNode(['--enable-source-maps', 'dist/server.js'], { NODE_ENV: 'production' }) : made
