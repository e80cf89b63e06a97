import { existsSync, writeFileSync } from 'node:fs'
import { constants, loadavg, setPriority } from 'node:os'
import { gzipSync } from 'node:zlib'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { printEvening } from '#lib/domain/parse.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readOrder, readType } from '#lib/plan/frames.ts'
import { WIRE } from '#lib/plan/wire.ts'
import { make } from '#server/cli/make.ts'
import { ready, signIn } from '#tests/e2e/people.ts'
import { benchEvening } from '#tests/support/bench-evening.ts'
import { findBrowser } from '#tests/support/find-browser.ts'
import { startServer } from '#tests/support/start-server.ts'
import { editOf } from './planner-evenings.ts'
import { edit, join } from './sync-load.ts'
import { type Report, table } from './table.ts'

const SLOWER = 4
const EDITS = 12
const BETWEEN_EDITS_MS = 1500
const BETWEEN_KEYS_MS = 250
/** How long one order may take to come: on a busy machine, and beside a browser that is at work all the time. */
const PATIENCE_MS = 60_000
/** And how long a page may take to stand there with one. */
const FIRST_MS = 120_000

/** The server takes what the browser leaves: in life it is another machine, and here there may be two processors for both. */
const stepBack = (pid: number): void => {
  setPriority(pid, constants.priority.PRIORITY_LOW)
  // Linux shares its processors among sessions first: sched(7), "The autogroup feature".
  if (existsSync(`/proc/${pid}/autogroup`)) writeFileSync(`/proc/${pid}/autogroup`, '19')
}

/** Brings an evening of 120 steps in from its file; gives its new id. */
const bringLarge = async (context: BrowserContext): Promise<string> => {
  const page = await context.newPage()
  await page.goto('/evenings/new')
  await ready(page)
  const buffer = Buffer.from(printEvening(benchEvening(1, 'large')))
  await page.getByLabel('Evening file').setInputFiles({ name: 'large.json', mimeType: 'application/json', buffer })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/menu$/)
  await page.close()
  return new URL(page.url()).pathname.split('/')[2] ?? ''
}

interface Weight {
  readonly path: string
  /**
   * gzip kB of what its HTML runs, of that and what its HTML asks for without running it yet, of what has come by the time that its first
   * picture stands, workers too, and of all that comes until the network is quiet.
   */
  readonly runs: number
  readonly asks: number
  readonly first: number
  readonly all: number
}

/** All JavaScript that a first visit of this address brings, in a browser that has kept nothing. */
const weigh = async (context: BrowserContext, path: string): Promise<Weight> => {
  const page = await context.newPage()
  const bodies = new Map<string, Promise<Buffer>>()
  page.on('response', (response) => {
    if (/\.js(?:\?|$)/.test(response.url())) bodies.set(response.url(), response.body())
  })
  const cdp = await context.newCDPSession(page)
  await cdp.send('Network.setCacheDisabled', { cacheDisabled: true })
  const answer = await page.goto(path)
  const html = (await answer?.text()) ?? ''
  // A page that runs nothing is never ready in that sense.
  if (html.includes('<script')) await ready(page)
  if (path.endsWith('/order')) await page.locator('[data-key]').first().waitFor()
  const stood = new Set(bodies.keys())
  await page.waitForLoadState('networkidle').catch(() => undefined)
  const sizes = await Promise.all(
    [...bodies].map(async ([url, body]) => ({ url, kB: gzipSync(await body.catch(() => Buffer.alloc(0))).length / 1000 })),
  )
  const sum = (some: typeof sizes) => some.reduce((total, { kB }) => total + kB, 0)
  // In its HTML, or named at its end as what is fetched after the first paint (server/web/paint-first.ts): what is run, and what is only fetched.
  const [, runs = '[]', fetches = '[]'] = /\((\[[^\]]*\]),(\[[^\]]*\])\)<\/script><\/body>/.exec(html) ?? []
  const whole = (addresses: readonly string[]) => addresses.map((src) => new URL(src, page.url()).href)
  const named = (pattern: RegExp) => whole([...html.matchAll(pattern)].map(([, src = '']) => src))
  const run = new Set([...named(/<script\b[^>]+src="([^"]+\.js[^"]*)"/g), ...whole(JSON.parse(runs))])
  const asked = new Set([...run, ...named(/<link\b[^>]+href="([^"]+\.js[^"]*)"/g), ...whole(JSON.parse(fetches))])
  await page.close()
  return {
    path,
    runs: sum(sizes.filter(({ url }) => run.has(url))),
    asks: sum(sizes.filter(({ url }) => asked.has(url))),
    first: sum(sizes.filter(({ url }) => stood.has(url))),
    all: sum(sizes),
  }
}

/** Durations of all interactions with a page, the longest event of each, in ms; see https://web.dev/articles/inp. */
const observeInteractions = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const longest = new Map<number, number>()
    Reflect.set(window, 'interactions', longest)
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const id: unknown = Reflect.get(entry, 'interactionId')
        if (typeof id === 'number' && id > 0) longest.set(id, Math.max(longest.get(id) ?? 0, entry.duration))
      }
    })
    observer.observe({ type: 'event', durationThreshold: 16, buffered: false } as PerformanceObserverInit)
  })

const interactions = (page: Page): Promise<number[]> =>
  page.evaluate(() => [...(Reflect.get(window, 'interactions') as Map<number, number>).values()])

interface Inp {
  readonly width: number
  readonly orders: number
  readonly keys: number
  readonly durations: readonly number[]
}

/** Walks through the steps by keyboard while somebody else changes the plan, on a slower processor. */
const measure = async (context: BrowserContext, address: string, id: string, width: number, first: number): Promise<Inp> => {
  const page = await context.newPage()
  await page.setViewportSize({ width, height: width < 700 ? 844 : 900 })
  await page.goto(`/evenings/${id}/order`)
  await ready(page)
  await page.locator('main[data-order="current"] [data-key]').first().waitFor()
  // What a page keeps for when there is no connection is fetched when it is idle, and is not what is measured here.
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ')
  const client = await join(Number(new URL(address).port), `/sync/${id}`, {
    Cookie: cookie,
    Origin: address,
    Host: new URL(address).host,
  })
  let orders = 0
  const line: { failed: string | null } = { failed: null }
  client.socket.on('message', (data: Buffer) => {
    const frame = readType(new Uint8Array(data))
    const message = frame?.type === WIRE.order ? readOrder(frame.body) : null
    if (message?.kind === 'order') orders += 1
    if (message?.kind === 'failed') line.failed = message.why
  })
  client.socket.on('close', (code: number) => {
    line.failed = `the second socket was closed with ${code}`
  })
  const cdp = await context.newCDPSession(page)
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  await observeInteractions(page)
  const evening = benchEvening(1, 'large')
  await page.locator('[data-key][tabindex="0"]').first().focus()
  let keys = 0
  let stop = false
  const walking = (async () => {
    while (!stop) {
      await page.keyboard.press(keys % 12 === 11 ? 'ArrowRight' : 'ArrowDown')
      keys += 1
      await page.waitForTimeout(BETWEEN_KEYS_MS)
    }
  })()
  for (let round = 0; round < EDITS && line.failed === null; round += 1) {
    // Of each measuring its own: an edit that changes nothing brings no order.
    const { step, ways } = editOf(evening, first + round)
    client.socket.send(edit(client, (doc) => setFields(doc, 'steps', step, { ways: [...ways] })))
    const before = orders
    for (let waited = 0; orders === before && line.failed === null && waited < PATIENCE_MS; waited += BETWEEN_KEYS_MS)
      await page.waitForTimeout(BETWEEN_KEYS_MS)
    if (orders === before) line.failed ??= `no order came in ${PATIENCE_MS} ms`
    await page.waitForTimeout(BETWEEN_EDITS_MS)
  }
  stop = true
  await walking
  const durations = await interactions(page)
  client.socket.removeAllListeners().terminate()
  await page.close()
  if (line.failed !== null || keys === 0)
    throw new Error(`${orders} orders came and ${keys} keys were pressed: ${line.failed ?? 'nothing was measured'}`)
  return { width, orders, keys, durations }
}

/** INP: the longest, one in fifty left out. An interaction of less than 16 ms is not told by the browser. */
const inpOf = ({ keys, durations }: Inp): number =>
  durations.toSorted((a, b) => b - a)[Math.min(durations.length - 1, Math.floor(keys / 50))] ?? 16

/** What each screen brings in JavaScript, and how long the running order of 120 steps takes to answer while it is replaced. Builds first. */
export const run = async (report: Report): Promise<void> => {
  if ((await make(report)) !== 0) throw new Error('it could not be built')
  const executablePath = findBrowser()
  if (!executablePath) throw new Error('there is no Chromium: npx playwright install chromium')
  const server = await startServer({ kind: 'built' })
  stepBack(server.pid)
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const context = await browser.newContext({ baseURL: server.address, locale: 'en-GB', timezoneId: 'Europe/London' })
    const [who] = server.demo
    if (!who) throw new Error('the server printed no demo account')
    const out = await browser.newContext({ baseURL: server.address })
    for (const each of [context, out]) each.setDefaultTimeout(FIRST_MS)
    const away = await Promise.all(['/sign-in', '/sign-up', '/reply/nothing'].map((path) => weigh(out, path)))
    const page = await context.newPage()
    await signIn(page, who)
    await page.close()
    const id = await bringLarge(context)
    const dish = benchEvening(1, 'large').dishes[0]?.id
    const evening = ['menu', `menu/${dish}`, 'order', 'order?view=list', 'guests', 'drinks', 'kitchens', 'chores', 'recipe']
    const weights = [...away]
    for (const path of ['/', '/evenings/new', '/account', ...evening.map((name) => `/evenings/${id}/${name}`)])
      weights.push(await weigh(context, path))
    report('JavaScript of the screens, gzip kB')
    const rows = weights.map(({ path, runs, asks, first, all }) => [
      path.replace(id, 'ID'),
      ...[runs, asks, first, all].map((kB) => kB.toFixed(0)),
    ])
    table(report, ['screen', 'runs', 'asks for', 'first picture', 'all'], rows)
    report(`INP of the running order at 120 steps, replaced while keys are pressed, processor ${SLOWER} × slower`)
    report(`(load of the machine: ${loadavg()[0]?.toFixed(1)})`)
    const measured = [await measure(context, server.address, id, 390, 0), await measure(context, server.address, id, 1440, EDITS)]
    table(
      report,
      ['width', 'orders', 'keys', 'INP ms', 'worst ms'],
      measured.map((one) => [
        String(one.width),
        String(one.orders),
        String(one.keys),
        inpOf(one).toFixed(0),
        Math.max(16, ...one.durations).toFixed(0),
      ]),
    )
  } finally {
    await browser.close()
    await server.kill()
    await server.remove()
  }
}
