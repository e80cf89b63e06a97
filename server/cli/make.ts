import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { generateClient } from '#prisma/generate.ts'
import { root } from '#server/root.ts'
import { bundleServer, bundleServiceWorker } from './bundle.ts'
import { fingerprint } from './fingerprint.ts'
import { finishStatic } from './finish-static.ts'
import { runNode } from './run.ts'

const stamp = `${root}dist/.made-of`

/** Whether .next and dist/ were made of the sources as they are now. */
const isFresh = (now: string): boolean =>
  existsSync(`${root}.next/BUILD_ID`) && existsSync(stamp) && readFileSync(stamp, 'utf8') === now

/** Makes what `npm start` runs, unless it stands there already. Gives the exit code: 0 when all went well. */
export const make = async (say: (what: string) => void): Promise<number> => {
  generateClient()
  const now = fingerprint()
  if (isFresh(now)) return 0
  say('Building Tableward. This takes about half a minute, once.')
  const code = await runNode(['node_modules/next/dist/bin/next', 'build'], { NODE_ENV: 'production' })
  if (code !== 0) return code
  finishStatic()
  await bundleServer()
  await bundleServiceWorker(now)
  writeFileSync(stamp, now)
  return 0
}
