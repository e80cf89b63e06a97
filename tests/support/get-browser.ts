import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { root } from '#server/root.ts'
import { findBrowser } from './find-browser.ts'

/** Finds a Chromium or fetches one; null, having said what to run, when neither works. */
export const getBrowser = (say: (what: string) => void): string | null => {
  const found = findBrowser()
  if (found) return existsSync(found) ? found : refuse(say, `CHROMIUM_PATH is ${found}, and there is no such file.`)
  for (const [program, ...args] of ways()) {
    say(`No Chromium here: trying ${program} ${args.join(' ')}`)
    const done = spawnSync(program, args, { cwd: root, stdio: 'inherit', timeout: 600_000 })
    const fetched = findBrowser()
    if (done.status === 0 && fetched) return fetched
  }
  return refuse(say, 'There is no Chromium and none could be fetched.')
}

const ways = (): readonly (readonly [string, ...string[]])[] => {
  const own = ['npx', 'playwright', 'install', 'chromium'] as const
  const isDebianRoot = process.getuid?.() === 0 && existsSync('/etc/debian_version')
  const lock = ['-o', 'DPkg::Lock::Timeout=300'] as const
  return isDebianRoot
    ? [own, ['apt-get', ...lock, 'update'], ['apt-get', ...lock, 'install', '-y', '--no-install-recommends', 'chromium']]
    : [own]
}

const refuse = (say: (what: string) => void, why: string): null => {
  say(
    `${why} Run one of these and then npm test again:\n  npx playwright install --with-deps chromium\n  sudo apt-get install chromium\nor set CHROMIUM_PATH to a Chromium or Chrome that is there.`,
  )
  return null
}
