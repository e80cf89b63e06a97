import { make } from './make.ts'

process.exitCode = await make(console.log)
