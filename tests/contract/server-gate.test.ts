import http from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { CLOSE } from '#lib/plan/wire.ts'
import { changePassword, signOutEverywhere } from '#server/auth/accounts.ts'
import { secret } from '#server/auth/session.ts'
import { parseEnv } from '#server/env.ts'
import { createEvening } from '#server/evenings/create.ts'
import { addMember, removeMember } from '#server/evenings/members.ts'
import type { Live } from '#server/live.ts'
import { setForwarded } from '#server/web/forwarded.ts'
import { openSyncGate } from '#server/web/sync-gate.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'
import { knock } from '#tests/support/socket.ts'

let parts: Live & { readonly close: () => Promise<void> }
let server: http.Server
let host: string
beforeAll(async () => {
  parts = await openLiveParts()
  const settings = parseEnv({ ORIGINS: 'https://dinner.example.org' })
  if (!settings.ok) throw new Error(settings.error.join())
  const gate = openSyncGate(parts.rooms, settings.value, console.error)
  server = http.createServer()
  server.on('upgrade', (request, socket, head) => {
    setForwarded(request, settings.value)
    gate.handleUpgrade(request, socket, head)
  })
  await new Promise<void>((resolve) => server.listen(0, resolve))
  host = `localhost:${(server.address() as AddressInfo).port}`
})
afterAll(async () => {
  server.close()
  await parts.close()
})

const table = async () => {
  const [owner, cook] = await Promise.all([somebody('Owner'), somebody('Cook')])
  const made = await createEvening(owner.id, {
    name: 'A dinner',
    date: '2027-03-06',
    zone: 'Europe/London',
    sitDown: '19:30',
    covers: 6,
  })
  if (!made.ok) throw new Error(made.error.kind)
  const { eveningId } = made.value
  const added = await addMember(owner.id, eveningId, { email: cook.email, role: 'cook', cook: null })
  if (!added.ok) throw new Error(added.error.kind)
  return { owner, cook, eveningId, cookMember: added.value.memberId, url: `ws://${host}/sync/${eveningId}` }
}

const enter = async (url: string, userId: string, headers: Record<string, string> = {}, version = 1) =>
  knock(url, { origin: `http://${host}`, cookie: await sessionCookie(secret(), userId, version), ...headers })

test('A10 a page of another site gets no socket; the site itself and the listed ones do', async () => {
  const t = await table()
  for (const origin of ['https://evil.example', `https://${host}`, 'null', `http://${host}.evil.example`, 'http://localhost'])
    expect({ origin, ...(await enter(t.url, t.cook.id, { origin })) }).toEqual({ origin, kind: 'refused', status: 403 })
  for (const origin of [`http://${host}`, 'https://dinner.example.org']) {
    const knocked = await enter(t.url, t.cook.id, { origin })
    expect(knocked.kind).toBe('open')
    if (knocked.kind === 'open') knocked.socket.close()
  }
})

test('A10 what a client says of a proxy is not believed', async () => {
  const t = await table()
  const forged = { origin: 'https://evil.example', 'x-forwarded-host': 'evil.example', 'x-forwarded-proto': 'https' }
  expect(await enter(t.url, t.cook.id, forged)).toEqual({ kind: 'refused', status: 403 })
})

test('A11 who is not signed in is closed with 4401, who has no seat with 4404', async () => {
  const t = await table()
  const stranger = await somebody('Stranger')
  const own = { origin: `http://${host}` }
  expect(await knock(t.url, own)).toEqual({ kind: 'closed', code: CLOSE.signIn })
  expect(await knock(t.url, { ...own, cookie: 'tableward.session=nonsense' })).toEqual({ kind: 'closed', code: CLOSE.signIn })
  const forged = await sessionCookie('another secret than that of this server', t.cook.id)
  expect(await knock(t.url, { ...own, cookie: forged })).toEqual({ kind: 'closed', code: CLOSE.signIn })
  expect(await enter(t.url, 'nobody')).toEqual({ kind: 'closed', code: CLOSE.signIn })
  expect(await enter(t.url, stranger.id)).toEqual({ kind: 'closed', code: CLOSE.gone })
  expect(await enter(`ws://${host}/sync/no-such-evening`, t.cook.id)).toEqual({ kind: 'closed', code: CLOSE.gone })
  expect(await enter(`ws://${host}/sync/${encodeURIComponent('../x')}`, t.cook.id)).toEqual({ kind: 'closed', code: CLOSE.gone })
})

test('A11 a seat that is taken away closes its sockets at once and for good', async () => {
  const t = await table()
  const [cook, owner] = [await enter(t.url, t.cook.id), await enter(t.url, t.owner.id)]
  if (cook.kind !== 'open' || owner.kind !== 'open') throw new Error('not let in')
  expect(await removeMember(t.owner.id, t.eveningId, t.cookMember)).toEqual({ ok: true, value: null })
  expect(await cook.closed).toBe(CLOSE.removed)
  expect(owner.socket.readyState).toBe(owner.socket.OPEN)
  expect(await enter(t.url, t.cook.id)).toEqual({ kind: 'closed', code: CLOSE.removed })
  owner.socket.close()
})

test('A12 signing out everywhere and a new password end every session and close every socket', async () => {
  const t = await table()
  const first = await enter(t.url, t.cook.id)
  if (first.kind !== 'open') throw new Error('not let in')
  await signOutEverywhere(t.cook.id)
  expect(await first.closed).toBe(CLOSE.signIn)
  expect(await enter(t.url, t.cook.id)).toEqual({ kind: 'closed', code: CLOSE.signIn })
  const second = await enter(t.url, t.cook.id, {}, 2)
  if (second.kind !== 'open') throw new Error('not let in with a new session')
  const changed = await changePassword(t.cook.id, { current: 'a password for tests', next: 'another password' })
  expect(changed.ok).toBe(true)
  expect(await second.closed).toBe(CLOSE.signIn)
  expect(await enter(t.url, t.cook.id, {}, 2)).toEqual({ kind: 'closed', code: CLOSE.signIn })
})

test('A11 a seat that is taken away while its socket is being let in does not stay', async () => {
  const t = await table()
  const trials = await Promise.all(
    Array.from({ length: 5 }, async () => {
      const other = await somebody('Other')
      const added = await addMember(t.owner.id, t.eveningId, { email: other.email, role: 'cook', cook: null })
      if (!added.ok) throw new Error(added.error.kind)
      const entering = enter(t.url, other.id)
      await removeMember(t.owner.id, t.eveningId, added.value.memberId)
      const knocked = await entering
      return knocked.kind === 'open' ? knocked.closed : knocked.kind === 'closed' ? knocked.code : -1
    }),
  )
  expect(trials).toEqual(trials.map(() => CLOSE.removed))
})
