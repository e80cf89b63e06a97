import { generateClient } from '#prisma/generate.ts'
import { runNode } from './run.ts'

generateClient()
process.exitCode = await runNode(['--import', 'tsx', 'server/main.ts'], { NODE_ENV: 'development' })
