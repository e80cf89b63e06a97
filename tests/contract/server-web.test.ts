import { gzipSync } from 'node:zlib'
import ICAL from 'ical.js'
import Database from 'libsql'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { sheetNames } from '#app/_words/print.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { planEvening } from '#lib/order/engine.ts'
import { readPlan } from '#lib/plan/read.ts'
import { make } from '#server/cli/make.ts'
import { hashOf, newToken } from '#server/guests/token.ts'
import { newBrowser } from '#tests/support/cookie-jar.ts'
import { formOf } from '#tests/support/posted-form.ts'
import { meaning, openDoors, ROLES, serverActions, waysIn } from '#tests/support/role-routes.ts'
import { socketClient } from '#tests/support/socket-client.ts'
import { type StartedServer, startServer } from '#tests/support/start-server.ts'

// The built server, as npm start runs it: builds first when that was not done yet.
let server: StartedServer
beforeAll(async () => {
  if ((await make(console.log)) !== 0) throw new Error('the build failed')
  server = await startServer({ kind: 'built' })
}, 600_000)
afterAll(() => server.remove())

const demo = (at: number) => {
  const account = server.demo[at]
  if (!account) throw new Error(server.output())
  return account
}

const query = (sql: string): Record<string, unknown>[] => {
  const db = new Database(`${server.dataFolder}/tableward.db`, { timeout: 5000 })
  const rows = db.prepare(sql).all() as Record<string, unknown>[]
  db.close()
  return rows
}

test('A13 signing in gives a cookie that scripts cannot read; a wrong password says "wrong" and nothing more', async () => {
  const browser = newBrowser(server.address)
  expect(await browser.signIn({ email: demo(0).email, password: 'wrong password' })).toBe('wrong')
  expect(await browser.signIn({ email: 'nobody@demo.example', password: 'wrong password' })).toBe('wrong')
  expect(browser.cookies.has('tableward.session')).toBe(false)
  expect(await browser.signIn(demo(0))).toBeNull()
  expect(browser.setBy('tableward.session')).toMatch(/; Path=\/; .*HttpOnly; SameSite=Lax$/i)
  expect(browser.setBy('tableward.session')).not.toMatch(/Secure/i)
  expect((await browser.get('/account')).status).toBe(200)
})

test('A12 a page sends who is not signed in to sign in and back; a session that was ended is no session', async () => {
  const browser = newBrowser(server.address)
  const away = await browser.get('/account')
  expect([away.status, away.headers.get('location')]).toEqual([307, '/sign-in?next=%2Faccount'])
  expect(await browser.signIn(demo(1))).toBeNull()
  expect((await browser.get('/account')).status).toBe(200)
  query(`UPDATE User SET sessionVersion = sessionVersion + 1 WHERE email = '${demo(1).email}' RETURNING id`)
  expect((await browser.get('/account')).status).toBe(307)
  expect(await (await browser.get('/api/auth/session')).json()).toEqual({})
})

test('A10 a change asked for by a page of another site is refused, whatever its cookies', async () => {
  const browser = newBrowser(server.address)
  expect(await browser.signIn(demo(0))).toBeNull()
  for (const [path, headers] of [
    ['/account', { origin: 'https://evil.example' }],
    ['/api/auth/signout', { origin: 'null' }],
    ['/api/auth/callback/credentials', { origin: 'http://localhost' }],
  ] as const) {
    const refused = await browser.post(path, {}, headers)
    expect([path, refused.status]).toEqual([path, 403])
  }
})

test('A16 every answer carries the security headers, and each page scripts of its own nonce alone', async () => {
  const browser = newBrowser(server.address)
  const nonces = new Set<string>()
  for (const path of ['/sign-in', '/sign-in', '/no/such/page', '/api/health', '/api/auth/session']) {
    const answer = await browser.get(path)
    const policy = answer.headers.get('content-security-policy') ?? ''
    expect(policy).toContain("object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'")
    expect(policy).not.toMatch(/script-src[^;]*unsafe/)
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
    expect(answer.headers.get('referrer-policy')).toBe('same-origin')
    expect(answer.headers.has('x-powered-by')).toBe(false)
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? ''
    nonces.add(nonce)
    const scripts = [...(await answer.text()).matchAll(/<script\b([^>]*)>/g)].map(([, attributes = '']) => attributes)
    if (path.startsWith('/sign-in')) expect(scripts.length).toBeGreaterThan(3)
    for (const attributes of scripts) expect(attributes).toContain(`nonce="${nonce}"`)
  }
  expect(nonces.size).toBe(5)
})

test('A8 the evening comes as a file to those who have a seat, and to nobody else', async () => {
  const [{ id } = { id: '' }] = query('SELECT id FROM Evening') as { id: string }[]
  const path = `/api/evenings/${id}/file`
  expect((await newBrowser(server.address).get(path)).status).toBe(401)
  const browser = newBrowser(server.address)
  await browser.signIn(demo(0))
  const file = await browser.get(path)
  expect(file.headers.get('content-disposition')).toMatch(/^attachment; filename="[a-z0-9-]+-\d{4}-\d\d-\d\d\.json"$/)
  expect(parseEvening(await file.json())).toMatchObject({ ok: true, value: { id } })
  expect((await browser.get('/api/evenings/another/file')).status).toBe(404)
})

test('A2 the server says that it and its database are well', async () => {
  const answer = await newBrowser(server.address).get('/api/health')
  expect([answer.status, await answer.json()]).toEqual([200, { ok: true }])
})

test('A16 no body that is sent to the sign-in handlers makes the server fail', async () => {
  const browser = newBrowser(server.address)
  const bodies: readonly (readonly [string, string])[] = [
    ['application/json', '{'],
    ['application/json', 'null'],
    ['multipart/form-data', 'nonsense'],
    ['application/x-www-form-urlencoded', 'csrfToken=%00&email[]=x'],
    ['application/x-www-form-urlencoded', `password=${'x'.repeat(20_000)}`],
  ]
  const actions = ['callback/credentials', 'signin/credentials', 'signout', 'session', 'csrf', '_log', 'nope']
  for (const action of actions)
    for (const [type, body] of bodies) {
      const answer = await browser.send(`/api/auth/${action}`, {
        method: 'POST',
        body,
        headers: { 'content-type': type, origin: server.address },
      })
      expect([action, body.slice(0, 20), answer.status < 500]).toEqual([action, body.slice(0, 20), true])
    }
  expect(server.output()).not.toMatch(/Error/)
})

test('F4 the page of an address is fetched for who is signed in, from a page of this site, and never from this machine', async () => {
  const browser = newBrowser(server.address)
  const ask = (address: string, headers: Record<string, string> = {}) =>
    browser.send('/api/recipes', {
      method: 'POST',
      body: JSON.stringify({ address }),
      headers: { 'content-type': 'application/json', origin: server.address, ...headers },
    })
  expect((await ask('http://127.0.0.1/')).status).toBe(401)
  expect(await browser.signIn(demo(0))).toBeNull()
  expect((await ask('http://127.0.0.1/', { origin: 'https://evil.example' })).status).toBe(403)
  expect((await ask('http://127.0.0.1/', { 'content-type': 'text/plain' })).status).toBe(400)
  for (const address of ['http://127.0.0.1/', 'http://localhost/', `${server.address}/api/health`, 'not an address']) {
    const refused = await ask(address)
    expect([address, refused.status]).toEqual([address, 422])
    expect(await refused.json()).toEqual({ message: expect.stringMatching(/\bpublic\b/) })
  }
  let often = await ask('http://127.0.0.1/')
  for (let tries = 0; often.status === 422 && tries < 100; tries += 1) often = await ask('http://127.0.0.1/')
  expect(often.status).toBe(429)
  expect(Number(often.headers.get('retry-after'))).toBeGreaterThan(0)
})

test('F5 a whole evening is made by one request, and what is refused names its field and makes nothing', async () => {
  const browser = newBrowser(server.address)
  const make = (body: unknown) =>
    browser.send('/api/evenings', {
      method: 'POST',
      body: JSON.stringify(body),
      headers: { 'content-type': 'application/json', origin: server.address },
    })
  const asked = { name: 'Soup', date: '2027-03-06', zone: 'Europe/London', sitDown: '19:30', guestsFrom: '19:00', covers: 4 }
  expect((await make(asked)).status).toBe(401)
  expect(await browser.signIn(demo(0))).toBeNull()
  const before = query('SELECT id FROM Evening').length
  const refused = await make({ ...asked, guestsFrom: '20:00' })
  expect(refused.status).toBe(422)
  expect(Object.keys(((await refused.json()) as { fields: object }).fields)).toEqual(['guestsFrom'])
  expect((await make('x'.repeat(3_100_000))).status).toBe(413)
  expect(query('SELECT id FROM Evening')).toHaveLength(before)
  const made = await make({ ...asked, cooks: ['Lou'] })
  expect(made.status).toBe(201)
  const { id } = (await made.json()) as { id: string }
  expect((await browser.get(`/evenings/${id}/menu`)).status).toBe(200)
})

/** What each way in means to a host, a cook, somebody removed, a stranger, a guest with a link, and nobody. */
const OPEN = ['in', 'in', 'in', 'in', 'in', 'in']
const SIGNED_IN = ['in', 'in', 'in', 'in', 'sign-in', 'sign-in']
const SEATED = ['in', 'in', 'not-found', 'not-found', 'sign-in', 'sign-in']
const HOST = ['in', 'not-allowed', 'not-found', 'not-found', 'sign-in', 'sign-in']
const WAYS: Readonly<Record<string, readonly string[]>> = {
  'GET /': SIGNED_IN,
  'GET /account': SIGNED_IN,
  'GET /api/account/file': SIGNED_IN,
  'GET /api/auth/[...nextauth]': OPEN,
  'POST /api/auth/[...nextauth]': OPEN,
  'POST /api/evenings': SIGNED_IN,
  'GET /api/evenings/[id]/calendar': SEATED,
  'GET /api/evenings/[id]/file': SEATED,
  'GET /api/evenings/[id]/guests': HOST,
  'POST /api/evenings/[id]/guests': HOST,
  'POST /api/evenings/[id]/push': SEATED,
  'GET /api/evenings/[id]/shopping': SEATED,
  'GET /api/fonts/[name]': OPEN,
  'GET /api/health': OPEN,
  'DELETE /api/push': SIGNED_IN,
  'GET /api/push': SIGNED_IN,
  'POST /api/recipes': SIGNED_IN,
  // Only who has the whole address may read a calendar; it says nothing of whether there is one.
  'GET /calendar/[file]': ROLES.map(() => 'not-found'),
  'GET /dishes': SIGNED_IN,
  'GET /evenings/[id]': SEATED,
  'GET /evenings/[id]/bring': SEATED,
  'GET /evenings/[id]/bring/[kitchen]': SEATED,
  'GET /evenings/[id]/chores': SEATED,
  'GET /evenings/[id]/cooks': SEATED,
  'GET /evenings/[id]/drinks': SEATED,
  'GET /evenings/[id]/guests': SEATED,
  'GET /evenings/[id]/history': SEATED,
  'GET /evenings/[id]/kitchens': SEATED,
  'GET /evenings/[id]/menu': SEATED,
  'GET /evenings/[id]/menu/[dish]': SEATED,
  'GET /evenings/[id]/order': SEATED,
  'GET /evenings/[id]/print': SEATED,
  'GET /evenings/[id]/print/[sheet]': SEATED,
  'GET /evenings/[id]/recipe': SEATED,
  'GET /evenings/[id]/shopping': SEATED,
  'GET /evenings/[id]/tonight': SEATED,
  'GET /evenings/new': SIGNED_IN,
  // Who has the link may sit down by it, or answer by it, whoever they are.
  'GET /join/[token]': OPEN,
  'POST /join/[token]': OPEN,
  'GET /reply/[token]': OPEN,
  'POST /reply/[token]': OPEN,
  'GET /reply/erased': OPEN,
  'GET /sign-in': OPEN,
  'GET /sign-up': OPEN,
  'GET /sw.js': OPEN,
  // A link that this server did not seal opens nothing, for anybody.
  'GET /unsubscribe/[token]': ['not-found', 'not-found', 'not-found', 'not-found', 'not-found', 'not-found'],
  'POST /unsubscribe/[token]': ['not-found', 'not-found', 'not-found', 'not-found', 'not-found', 'not-found'],
}
/** Server actions that need no account. All others begin by asking who it is. */
const OPEN_ACTIONS = ['app/_account/actions.ts signUpAction']

test('I15 every way in, for every role, is open to whom the table says', async () => {
  const ways = waysIn()
  const isThere = (way: string) => !way.endsWith('(not there)')
  expect(ways.filter(isThere)).toEqual(Object.keys(WAYS).sort())
  const doors = await openDoors(server)
  for (const way of ways) {
    const roles = isThere(way) ? ROLES : (['host'] as const)
    const found = await Promise.all(roles.map(async (role) => meaning(await doors.ask(way, role))))
    expect([way, found]).toEqual([way, WAYS[way] ?? ['no-such-method']])
  }
  const own = await (await doors.ask('GET /reply/[token]', 'guest')).text()
  expect(own).toContain('Own household')
  expect(own).not.toContain('Other household')
})

test('I15 every server action asks who it is first, but for signing up', () => {
  const actions = serverActions()
  expect(actions.length).toBeGreaterThan(5)
  expect(actions.filter(({ text }) => !/(requireUser|currentUser)\(\)/.test(text)).map(({ name }) => name)).toEqual(OPEN_ACTIONS)
})

test('I11 I12 a link’s page is plain HTML that is kept and told nowhere, and its form is taken from a page without referrers', async () => {
  const { otherLink } = await openDoors(server)
  const ask = (headers: Record<string, string> = {}, body?: URLSearchParams) =>
    fetch(`${server.address}${otherLink}`, { redirect: 'manual', headers, ...(body && { method: 'POST', body }) })
  for (const answer of [await ask(), await fetch(`${server.address}/reply/AAAAAAAAAAAAAAAAAAAAAA`)]) {
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer')
    expect(answer.headers.get('cache-control')).toMatch(/^(no-store(, )?)+$/)
    expect(answer.headers.get('x-robots-tag')).toBe('noindex, nofollow')
  }
  const page = await (await ask()).text()
  const scripts = [...page.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)]
  expect(scripts.map(([, attributes]) => /\bsrc=/.test(attributes ?? ''))).toEqual([false])
  expect(gzipSync(scripts.map(([, , text]) => text).join('')).length).toBeLessThan(120 * 1024)
  const form = formOf(page, 'data-answer') ?? new URLSearchParams()
  form.set('reply-0', 'yes')
  form.set('do', 'answer')
  expect((await ask({ origin: 'https://evil.example' }, form)).status).toBe(403)
  expect((await ask({ origin: 'null', 'sec-fetch-site': 'cross-site' }, form)).status).toBe(403)
  const sent = await ask({ origin: 'null' }, form)
  expect([sent.status, sent.headers.get('location')]).toEqual([303, `${otherLink}?sent`])
  expect((await fetch(`${server.address}/sign-in`, { method: 'POST', headers: { origin: 'null' } })).status).toBe(403)
  expect(server.output()).not.toContain(otherLink.slice('/reply/'.length))
})

test('CA7 CA8 a calendar is read by its address alone, its numbers rise with what changes, also after a restart, and a dead address opens nothing', async () => {
  const run = (sql: string, values: readonly unknown[]) => {
    const db = new Database(`${server.dataFolder}/tableward.db`, { timeout: 5000 })
    db.prepare(sql).run([...values])
    db.close()
  }
  const host = newBrowser(server.address)
  await host.signIn(demo(0))
  const [member] = query(
    `SELECT m.id, m.eveningId, m.cook FROM Member m JOIN User u ON u.id = m.userId WHERE u.email = '${demo(0).email}' AND m.cook IS NOT NULL`,
  ) as { id: string; eveningId: string; cook: string }[]
  if (!member) throw new Error('the demo has no cook')
  const file = parseEvening(await (await host.get(`/api/evenings/${member.eveningId}/file`)).json())
  if (!file.ok) throw new Error('the demo is no evening')
  const order = planEvening(file.value, { budget: { steps: 20, seed: 1 } })
  const store = (kept: typeof order) => {
    run('DELETE FROM StoredOrder WHERE eveningId = ?', [member.eveningId])
    run('INSERT INTO StoredOrder (eveningId, hash, "order", at) VALUES (?, ?, ?, ?)', [
      member.eveningId,
      'of before',
      JSON.stringify(kept),
      new Date().toISOString(),
    ])
  }
  const token = newToken()
  const path = `/calendar/${token}.ics`
  const ask = (where = path) => fetch(`${server.address}${where}`)
  const read = (text: string) =>
    new Map(
      new ICAL.Component(ICAL.parse(text))
        .getAllSubcomponents('vevent')
        .map((each) => new ICAL.Event(each))
        .map((event) => [event.uid, { sequence: event.sequence, from: event.startDate.toString() }]),
    )
  store(order)
  run('INSERT INTO CalendarFeed (memberId, tokenHash, alarm) VALUES (?, ?, ?)', [member.id, hashOf(token), 15])
  const answer = await ask()
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8'])
  expect(answer.headers.get('cache-control')).toMatch(/^(no-store(, )?)+$/)
  expect([answer.headers.get('x-robots-tag'), answer.headers.get('referrer-policy')]).toEqual([
    'noindex, nofollow',
    'no-referrer',
  ])
  const text = await answer.text()
  const first = read(text)
  expect(first.size).toBeGreaterThan(8)
  expect([...first.values()].every(({ sequence }) => sequence === 0)).toBe(true)
  expect(await (await ask()).text()).toBe(text)

  const own = order.cues.filter(({ cooks }) => cooks.includes(member.cook))
  const [moved, dropped] = [own.at(0), own.at(-1)]
  if (!moved || !dropped || moved === dropped) throw new Error('too little to do')
  const earlier = (instant: string) => new Date(Date.parse(instant) - 600_000).toISOString()
  store({
    ...order,
    cues: order.cues
      .filter((cue) => cue !== dropped)
      .map((cue) => (cue === moved ? { ...cue, start: earlier(cue.start), end: earlier(cue.end) } : cue)),
  })
  const isOf = (uid: string, { step }: { readonly step: string }) => uid.includes(`.${step}.`)
  const second = read(await (await ask()).text())
  const risen = [...second].filter(([uid, { sequence }]) => sequence > (first.get(uid)?.sequence ?? 0)).map(([uid]) => uid)
  expect(risen.some((uid) => isOf(uid, moved))).toBe(true)
  expect(risen.length).toBeLessThan(second.size / 2)
  for (const uid of risen) expect(second.get(uid)?.sequence).toBe(1)
  const gone = [...first.keys()].filter((uid) => !second.has(uid))
  expect(gone.length).toBeGreaterThan(0)
  const taken = new ICAL.Component(ICAL.parse(await (await host.get(`/api/evenings/${member.eveningId}/calendar`)).text()))
  const cancelled = taken.getAllSubcomponents('vevent').filter((each) => each.getFirstPropertyValue('status') === 'CANCELLED')
  expect(cancelled.map((each) => each.getFirstPropertyValue('uid')).sort()).toEqual(gone.sort())

  expect(server.output()).not.toContain(token)
  await server.kill()
  server = await startServer({ kind: 'built', dataFolder: server.dataFolder })
  expect(read(await (await ask()).text())).toEqual(second)
  expect(server.output()).not.toContain(token)

  const nothing = await (await ask(`/calendar/${newToken()}.ics`)).text()
  for (const sql of [
    'UPDATE CalendarFeed SET tokenHash = NULL WHERE memberId = ?',
    'UPDATE Member SET revokedAt = CURRENT_TIMESTAMP WHERE id = ?',
  ]) {
    run('UPDATE CalendarFeed SET tokenHash = ? WHERE memberId = ?', [hashOf(token), member.id])
    expect((await ask()).status).toBe(200)
    run(sql, [member.id])
    const refused = await ask()
    expect([refused.status, await refused.text()]).toEqual([404, nothing])
  }
  run('UPDATE Member SET revokedAt = NULL WHERE id = ?', [member.id])
})

test('JO13 no page, file or frame that somebody of another kitchen is sent names a guest while nothing is theirs to cook', async () => {
  const [{ eveningId } = { eveningId: '' }] = query(
    `UPDATE Guest SET name = 'Planted Name' WHERE eveningId IN (SELECT m.eveningId FROM Member m JOIN User u ON u.id = m.userId
      WHERE u.email = '${demo(0).email}') RETURNING eveningId`,
  ) as { eveningId: string }[]
  const host = newBrowser(server.address)
  await host.signIn(demo(0))
  expect(await (await host.get(`/api/evenings/${eveningId}/guests`)).text()).toContain('Planted Name')

  const token = newToken()
  query(
    `INSERT INTO SeatLink (id, eveningId, label, tokenHash) VALUES ('${hashOf(token)}', '${eveningId}', 'Noor', '${hashOf(token)}') RETURNING id`,
  )
  const far = newBrowser(server.address)
  const sat = await far.post(`/join/${token}`, { as: 'name', name: 'Noor', cook: '', works: 'home', minutes: '30' })
  expect([sat.status, sat.headers.get('location')]).toEqual([303, `/evenings/${eveningId}`])

  // No cook of the plan, so that no running order gives them anything to put on the plates.
  query(`UPDATE Member SET cook = NULL WHERE id = (SELECT memberId FROM SeatLink WHERE id = '${hashOf(token)}') RETURNING id`)

  const frames: Buffer[] = []
  const cookie = [...far.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
  const headers = { cookie, origin: server.address }
  const line = socketClient(`${server.address.replace('http', 'ws')}/sync/${eveningId}`, undefined, headers)
  line.socket.on('message', (data: Buffer) => frames.push(data))
  await line.until(({ doc }) => readPlan(doc).evening.cooks.some(({ name }) => name === 'Noor'))
  const plan = readPlan(line.client.doc).evening
  line.close()
  await line.ended

  const fill: Readonly<Record<string, string>> = {
    '[id]': eveningId,
    '[dish]': plan.dishes[0]?.id ?? '',
    '[kitchen]': plan.kitchens[0]?.id ?? '',
  }
  const paths = Object.keys(WAYS)
    .filter((way) => way.startsWith('GET ') && (WAYS[way] === SEATED || WAYS[way] === SIGNED_IN))
    .flatMap((way) => (way.includes('[sheet]') ? Object.keys(sheetNames).map((sheet) => way.replace('[sheet]', sheet)) : [way]))
    .map((way) => way.slice('GET '.length).replace(/\[[^\]]+\]/g, (name) => fill[name] ?? name))
  expect(paths.length).toBeGreaterThan(20)
  for (const path of paths) {
    const answer = await far.get(path)
    expect([path, meaning(answer), (await answer.text()).includes('Planted')]).toEqual([path, 'in', false])
  }
  const sent = Buffer.concat(frames)
  expect([sent.includes('Noor'), sent.includes('Planted')]).toEqual([true, false])
})
