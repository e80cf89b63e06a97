import { afterAll, beforeAll, expect, test } from 'vitest'
import { GET, POST } from '#app/join/[token]/route.ts'
import { printEvening } from '#lib/domain/parse.ts'
import { setDishKitchen } from '#lib/plan/commands/kitchen-of-dish.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { makeAccount, signIn } from '#server/auth/accounts.ts'
import { deleteAccount, stakesOf } from '#server/auth/delete-account.ts'
import { openLimits } from '#server/auth/limits.ts'
import { seatOf } from '#server/auth/seat.ts'
import { secret, userOfCookies } from '#server/auth/session.ts'
import { cookiesOf } from '#server/auth/upgrade.ts'
import { createEvening } from '#server/evenings/create.ts'
import { deleteEvening } from '#server/evenings/delete.ts'
import { importEvening } from '#server/evenings/file.ts'
import { addMember, listMembers, removeMember, setCook, setRole } from '#server/evenings/members.ts'
import { needsFor } from '#server/guests/needs.ts'
import { type Live, setLive } from '#server/live.ts'
import { endSeatLink, listSeatLinks, makeSeatLink } from '#server/seats/links.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

/** Somebody's dinner, far ahead, with the demo's cooks and no guests but those that are given. */
const dinner = async (date = '2099-03-07') => {
  const host = await somebody('Mira')
  const plan = demoEvening(date)
  const made = await importEvening(host.id, printEvening(plan))
  if (!made.ok) throw new Error(made.error.kind)
  const { eveningId } = made.value
  const link = async (asked: unknown) => {
    const path = await makeSeatLink(host.id, eveningId, asked)
    if (!path.ok) throw new Error(`no link: ${path.error.kind}`)
    return path.value.path
  }
  const [, cook] = plan.cooks
  if (!cook) throw new Error('the demo has no second cook')
  return { host, plan, eveningId, link, cook }
}

/** A browser that follows a link: it keeps the cookie that it is given. */
const newDevice = (cookie = '') => {
  let kept = cookie
  const ask = async (path: string, form?: Record<string, string>, from = 'nobody') => {
    const request = new Request(`http://localhost${path}`, {
      headers: { 'x-forwarded-for': from, cookie: kept },
      ...(form && { method: 'POST', body: new URLSearchParams(form) }),
    })
    const context = { params: Promise.resolve({ token: path.slice('/join/'.length) }) }
    const answer = await (form ? POST(request, context) : GET(request, context))
    kept = answer.headers.get('set-cookie')?.split(';')[0] ?? kept
    return { status: answer.status, text: await answer.text(), location: answer.headers.get('location') }
  }
  return { ask, user: () => userOfCookies(cookiesOf(kept), false), cookie: () => kept }
}

const NAME = { as: 'name', name: 'Noor', cook: '', works: 'here' }
const outcome = async (asked: Promise<{ ok: true } | { ok: false; error: { kind: string } }>): Promise<string> => {
  const answer = await asked
  return answer.ok ? 'done' : answer.error.kind
}

test('JO1 JO2 looking at a link takes no seat; posting a name does, without an e-mail address, and the same link on another device is the same person', async () => {
  const { eveningId, link, cook } = await dinner()
  const path = await link({ for: 'cook', cook: cook.id })
  const before = await parts.db.member.count({ where: { eveningId } })
  const [phone, tablet] = [newDevice(), newDevice()]
  const page = await phone.ask(path)
  expect([page.status, page.text.includes('Sit down')]).toEqual([200, true])
  expect(await phone.user()).toBeNull()
  expect(await parts.db.member.count({ where: { eveningId } })).toBe(before)

  expect(await phone.ask(path, NAME)).toMatchObject({ status: 303, location: `/evenings/${eveningId}` })
  const noor = await phone.user()
  expect(noor).toMatchObject({ name: 'Noor', email: null })
  expect(await seatOf(noor?.id ?? '', eveningId)).toMatchObject({ role: 'cook', cook: cook.id, name: 'Noor' })

  expect((await tablet.ask(path)).text).toContain('Go on as Noor')
  // Written on a page that was opened before the seat was taken: nobody becomes a second person.
  expect(await tablet.ask(path, { ...NAME, name: 'Ilse' })).toMatchObject({ status: 409 })
  expect(await tablet.ask(path, { as: 'again' })).toMatchObject({ status: 303 })
  expect(await tablet.user()).toEqual(noor)
  expect(await parts.db.member.count({ where: { eveningId } })).toBe(before + 1)
})

test('JO2 two devices that sit down by one link at the same moment are one person', async () => {
  const { eveningId, link, cook } = await dinner()
  const path = await link({ for: 'cook', cook: cook.id })
  const before = await parts.db.user.count()
  const answers = await Promise.all([newDevice(), newDevice(), newDevice()].map((device) => device.ask(path, NAME)))
  expect(answers.map(({ status }) => status).sort()).toEqual([303, 409, 409])
  expect(await parts.db.user.count()).toBe(before + 1)
  expect(await parts.db.member.count({ where: { eveningId, cook: cook.id, revokedAt: null } })).toBe(1)
})

test('JO3 somebody who is not in the plan yet is written into it, with a kitchen at home when they bring it', async () => {
  const { eveningId, link, plan } = await dinner()
  const device = newDevice()
  const path = await link({ for: 'new', label: 'Ilse' })
  const wrong = await device.ask(path, { ...NAME, name: '', works: 'home', minutes: 'far' })
  expect(wrong.status).toBe(422)
  for (const told of ['Write your name', 'Write the minutes', 'value="far"']) expect(wrong.text).toContain(told)
  expect((await device.ask(path, { ...NAME, name: 'Ilse <b>', works: 'home', minutes: '25' })).status).toBe(303)
  const after = await parts.rooms.read(eveningId)
  const seat = await seatOf((await device.user())?.id ?? '', eveningId)
  const cook = after.cooks.find(({ id }) => id === seat?.cook)
  const [first, ...rest] = cook?.presence ?? []
  const home = after.kitchens.find(({ id }) => id === first?.kitchen)
  expect(cook).toMatchObject({ name: 'Ilse <b>', host: false })
  expect(home).toMatchObject({ name: 'Ilse <b>’s kitchen', toTable: 'PT25M' })
  expect(home?.kit.length).toBeGreaterThan(3)
  expect(rest.at(-1)?.kitchen).toBe(plan.host)
  expect(after.cooks).toHaveLength(plan.cooks.length + 1)
  expect((await newDevice().ask(path)).text).toContain('Go on as Ilse &lt;b&gt;')
})

test('JO4 a new link ends the old one at once, also before anybody sat down; withdrawn, replaced, run out and never made are answered alike', async () => {
  const { host, eveningId, link, cook } = await dinner()
  const first = await link({ for: 'cook', cook: cook.id })
  const second = await link({ for: 'cook', cook: cook.id })
  const withdrawn = await link({ for: 'new', label: 'Kit' })
  const links = await listSeatLinks(host.id, eveningId)
  const kit = links.ok ? links.value.find(({ label }) => label === 'Kit') : undefined
  expect(await outcome(endSeatLink(host.id, eveningId, kit?.id ?? ''))).toBe('done')
  const over = await dinner('2020-03-07')
  const [past, gone] = [await over.link({ for: 'new', label: 'Kit' }), await dinner()]
  const deleted = await gone.link({ for: 'new', label: 'Kit' })
  expect(await outcome(deleteEvening(gone.host.id, gone.eveningId, gone.plan.name))).toBe('done')
  const texts = new Set<string>()
  for (const path of [first, withdrawn, past, deleted, '/join/AAAAAAAAAAAAAAAAAAAAAA', '/join/x'])
    for (const form of [undefined, NAME]) {
      const answer = await newDevice().ask(path, form)
      expect([path === first, answer.status]).toEqual([path === first, 404])
      texts.add(answer.text)
    }
  expect(texts.size).toBe(1)
  expect((await newDevice().ask(second)).status).toBe(200)
  const stored = JSON.stringify(await parts.db.seatLink.findMany())
  expect(stored).not.toContain(second.slice('/join/'.length))
})

test('JO4 twenty tokens that open nothing, and an address waits, with a good one too', async () => {
  setLive({ ...parts, limits: openLimits() })
  const { link } = await dinner()
  const good = await link({ for: 'new', label: 'Kit' })
  for (let tries = 0; tries < 20; tries += 1)
    expect(
      (await newDevice().ask(`/join/${'A'.repeat(20)}${String(tries).padStart(2, '0')}`, undefined, '192.0.2.7')).status,
    ).toBe(404)
  expect((await newDevice().ask(good, undefined, '192.0.2.7')).status).toBe(429)
  expect((await newDevice().ask(good, NAME, '192.0.2.7')).status).toBe(429)
  expect((await newDevice().ask(good, undefined, '192.0.2.8')).status).toBe(200)
  setLive(parts)
})

test('JO5 a new link leaves the devices in, or puts each of them out; a cook makes one for another device of their own', async () => {
  const { host, eveningId, link, cook } = await dinner()
  const old = await link({ for: 'cook', cook: cook.id })
  const phone = newDevice()
  await phone.ask(old, NAME)
  const noor = await phone.user()
  const seat = await seatOf(noor?.id ?? '', eveningId)
  const own = await makeSeatLink(noor?.id ?? '', eveningId, { for: 'member', member: seat?.memberId, out: false })
  if (!own.ok) throw new Error(own.error.kind)
  expect((await newDevice().ask(old)).status).toBe(404)
  expect(await phone.user()).toEqual(noor)
  const listed = await listSeatLinks(noor?.id ?? '', eveningId)
  expect(listed).toMatchObject({ value: [{ member: seat?.memberId }] })

  const last = await link({ for: 'member', member: seat?.memberId ?? '', out: true })
  expect(await phone.user()).toBeNull()
  expect((await newDevice().ask(own.value.path)).status).toBe(404)
  expect((await phone.ask(last, { as: 'again' })).status).toBe(303)
  expect(await phone.user()).toEqual(noor)
  expect(await outcome(makeSeatLink(noor?.id ?? '', eveningId, { for: 'new', label: 'A friend' }))).toBe('not-allowed')
  expect(await outcome(makeSeatLink(host.id, eveningId, { for: 'cook', cook: cook.id }))).toBe('cook-taken')
  expect(await outcome(makeSeatLink(host.id, eveningId, { for: 'cook', cook: 'nobody' }))).toBe('unknown-cook')
})

test('JO6 who is taken out is out with their link, and by a new one comes back as the person they were', async () => {
  const { host, eveningId, link, cook } = await dinner()
  const path = await link({ for: 'cook', cook: cook.id })
  const phone = newDevice()
  await phone.ask(path, NAME)
  const noor = await phone.user()
  const seat = await seatOf(noor?.id ?? '', eveningId)
  expect(await outcome(removeMember(host.id, eveningId, seat?.memberId ?? ''))).toBe('done')
  expect(await seatOf(noor?.id ?? '', eveningId)).toBeNull()
  expect((await newDevice().ask(path, { as: 'again' })).status).toBe(404)
  const again = await link({ for: 'cook', cook: cook.id })
  for (const device of [newDevice(), phone]) expect((await device.ask(again)).text).toContain('Go on as Noor')
  expect((await phone.ask(again, { as: 'again' })).status).toBe(303)
  expect(await phone.user()).toEqual(noor)
  expect(await seatOf(noor?.id ?? '', eveningId)).toMatchObject({ memberId: seat?.memberId, cook: cook.id })
})

test('JO7 who has an account sits down by it, once; somebody who came by a link elsewhere becomes another person here', async () => {
  const { eveningId, link } = await dinner()
  const kim = await somebody('Kim')
  const device = newDevice(await sessionCookie(secret(), kim.id))
  const path = await link({ for: 'new', label: 'Kim' })
  expect((await device.ask(path)).text).toContain('Sit down as Kim')
  expect((await device.ask(path, { as: 'account', cook: '', works: 'here' })).status).toBe(303)
  expect(await seatOf(kim.id, eveningId)).toMatchObject({ name: 'Kim', role: 'cook' })
  // The link is now that seat's, and an account lets nobody in but by its password.
  const other = newDevice()
  expect((await other.ask(path)).text).toContain('Sign in')
  expect((await other.ask(path, { as: 'again' })).status).toBe(409)
  expect(await other.user()).toBeNull()
  const second = await link({ for: 'new', label: 'Kim' })
  expect((await device.ask(second)).text).toContain('you have a seat already')
  expect((await device.ask(second, { as: 'account', cook: '', works: 'here' })).status).toBe(409)

  const elsewhere = await dinner()
  const guest = newDevice()
  await guest.ask(await elsewhere.link({ for: 'new', label: 'Lou' }), { ...NAME, name: 'Lou' })
  const lou = await guest.user()
  expect((await guest.ask(second, { as: 'account', cook: '', works: 'here' })).status).toBe(409)
  expect((await guest.ask(second, { ...NAME, name: 'Lou' })).status).toBe(303)
  expect((await guest.user())?.id).not.toBe(lou?.id)
  expect(await parts.db.member.count({ where: { userId: lou?.id ?? '' } })).toBe(1)
})

test('JO8 who came by a link makes no evening and is no host, until they take an e-mail address and a password, which ends what the link opened', async () => {
  const { host, plan, eveningId, link } = await dinner()
  const path = await link({ for: 'new', label: 'Noor' })
  const phone = newDevice()
  await phone.ask(path, NAME)
  const id = (await phone.user())?.id ?? ''
  const seat = await seatOf(id, eveningId)
  const asked = { name: 'Mine', date: '2099-03-08', zone: 'UTC', sitDown: '19:30', covers: 4 }
  expect(await outcome(createEvening(id, asked))).toBe('needs-account')
  expect(await outcome(importEvening(id, printEvening(plan)))).toBe('needs-account')
  expect(await outcome(setRole(host.id, eveningId, seat?.memberId ?? '', 'host'))).toBe('needs-account')

  const email = `noor-${id}@test.example`
  const password = 'a long enough one'
  expect(await outcome(makeAccount(id, { email: host.email, password }, '192.0.2.9'))).toBe('email-taken')
  expect(await outcome(makeAccount(id, { email, password: 'short' }, '192.0.2.9'))).toBe('invalid')
  expect(await outcome(makeAccount(id, { email, password }, '192.0.2.9'))).toBe('done')
  expect(await outcome(makeAccount(id, { email: `x${email}`, password }, '192.0.2.9'))).toBe('has-account')
  // Whoever made the link knows it: neither it nor a session that began by it opens an account.
  expect(await phone.user()).toBeNull()
  expect((await newDevice().ask(path, { as: 'again' })).status).toBe(409)
  expect(await signIn({ email, password }, '192.0.2.9')).toMatchObject({ value: { id } })
  expect(await seatOf(id, eveningId)).toMatchObject({ memberId: seat?.memberId })
  expect(await outcome(createEvening(id, asked))).toBe('done')
  expect(await outcome(setRole(host.id, eveningId, seat?.memberId ?? '', 'host'))).toBe('done')
})

test('JO9 a host hands over: the other may all, and the first is a cook or leaves; the last host does neither', async () => {
  const { host, eveningId } = await dinner()
  const kim = await somebody('Kim')
  const added = await addMember(host.id, eveningId, { email: kim.email, role: 'cook', cook: null })
  if (!added.ok) throw new Error(added.error.kind)
  const mine = await seatOf(host.id, eveningId)
  expect(await outcome(setRole(host.id, eveningId, mine?.memberId ?? '', 'cook'))).toBe('last-host')
  expect(await outcome(removeMember(host.id, eveningId, mine?.memberId ?? ''))).toBe('last-host')
  expect(await outcome(setRole(host.id, eveningId, added.value.memberId, 'host'))).toBe('done')
  const both = await Promise.all([
    outcome(setRole(host.id, eveningId, mine?.memberId ?? '', 'cook')),
    outcome(setRole(kim.id, eveningId, added.value.memberId, 'cook')),
  ])
  expect(both.filter((kind) => kind === 'done')).toHaveLength(1)
  const [last, other] = both[0] === 'done' ? [kim, host] : [host, kim]
  expect(await outcome(needsFor(other.id, eveningId))).toBe('done')
  expect(await outcome(deleteEvening(other.id, eveningId, 'x'))).toBe('not-allowed')
  const otherSeat = await seatOf(other.id, eveningId)
  expect(await outcome(removeMember(other.id, eveningId, otherSeat?.memberId ?? ''))).toBe('done')
  expect(await seatOf(other.id, eveningId)).toBeNull()
  expect(await seatOf(last.id, eveningId)).toMatchObject({ role: 'host' })
})

test('JO10 an evening is deleted by its name typed, for everybody, with all that was in it', async () => {
  const { host, plan, eveningId, link } = await dinner()
  await link({ for: 'new', label: 'Kit' })
  const phone = newDevice()
  await phone.ask(await link({ for: 'new', label: 'Noor' }), NAME)
  const noor = await phone.user()
  expect(noor).toMatchObject({ name: 'Noor' })
  expect(await outcome(deleteEvening(host.id, eveningId, 'another'))).toBe('not-the-name')
  expect(await seatOf(host.id, eveningId)).not.toBeNull()
  expect(await outcome(deleteEvening(host.id, eveningId, ` ${plan.name} `))).toBe('done')
  expect(await seatOf(host.id, eveningId)).toBeNull()
  const { db } = parts
  const left = await Promise.all([
    db.evening.count({ where: { id: eveningId } }),
    db.member.count({ where: { eveningId } }),
    db.guest.count({ where: { eveningId } }),
    db.seatLink.count({ where: { eveningId } }),
    db.planUpdate.count({ where: { eveningId } }),
    // Somebody with an account stays; who came by a link had nothing else here.
    db.user.count({ where: { id: noor?.id ?? '' } }),
    db.user.count({ where: { id: host.id } }),
  ])
  expect(left).toEqual([0, 0, 0, 0, 0, 0, 1])
})

test('JO11 an account is deleted with its seats and what was its alone; an evening that others cook at gets another host first', async () => {
  const { host, eveningId, link } = await dinner()
  const alone = await importEvening(host.id, printEvening(demoEvening('2099-03-09')))
  if (!alone.ok) throw new Error(alone.error.kind)
  const phone = newDevice()
  await phone.ask(await link({ for: 'new', label: 'Noor' }), NAME)
  const noor = await phone.user()
  expect(await stakesOf(host.id)).toMatchObject({ needHost: [{ id: eveningId }], alone: [{ id: alone.value.eveningId }] })
  expect(await deleteAccount(host.id, 'wrong')).toMatchObject({ error: { kind: 'wrong-password' } })
  expect(await deleteAccount(host.id, 'a password for tests')).toMatchObject({
    error: { kind: 'last-host', evenings: [{ id: eveningId }] },
  })

  const cooks = (await parts.rooms.read(eveningId)).cooks.length
  expect(await deleteAccount(noor?.id ?? '', 'Somebody')).toMatchObject({ error: { kind: 'not-the-name' } })
  expect(await deleteAccount(noor?.id ?? '', 'Noor')).toEqual({ ok: true, value: null })
  expect(await phone.user()).toBeNull()
  // What they wrote in the plan is the table's.
  expect((await parts.rooms.read(eveningId)).cooks).toHaveLength(cooks)
  expect(await stakesOf(host.id)).toMatchObject({ needHost: [], alone: [{}, {}] })
  expect(await deleteAccount(host.id, 'a password for tests')).toEqual({ ok: true, value: null })
  expect(await parts.db.evening.count({ where: { id: { in: [eveningId, alone.value.eveningId] } } })).toBe(0)
  expect(await parts.db.user.count({ where: { id: host.id } })).toBe(0)
})

test('JO12 e-mail addresses are told to hosts and of oneself', async () => {
  const { host, eveningId, link } = await dinner()
  const phone = newDevice()
  await phone.ask(await link({ for: 'new', label: 'Noor' }), NAME)
  const noor = await phone.user()
  const [seen, all] = [await listMembers(noor?.id ?? '', eveningId), await listMembers(host.id, eveningId)]
  expect(JSON.stringify(seen)).not.toContain(host.email)
  expect(JSON.stringify(all)).toContain(host.email)
  expect(seen).toMatchObject({
    value: [
      { name: 'Mira', account: true },
      { name: 'Noor', account: false, you: true },
    ],
  })
})

test('JO13 who comes from another kitchen is told needs once they bring something, and names only for what they plate', async () => {
  const host = await somebody('Mira')
  const plan = demoEvening('2099-03-10')
  const nuts = { need: 'no-nuts', grade: 'severe' }
  const guests = plan.guests.slice(0, 1).map((guest) => ({ ...guest, name: 'Planted Name', reply: 'yes', needs: [nuts] }))
  const made = await importEvening(host.id, JSON.stringify({ ...plan, guests }))
  if (!made.ok) throw new Error(made.error.kind)
  const { eveningId } = made.value
  const sitDown = async (works: Record<string, string>) => {
    const path = await makeSeatLink(host.id, eveningId, { for: 'new', label: 'Noor' })
    if (!path.ok) throw new Error(path.error.kind)
    const device = newDevice()
    await device.ask(path.value.path, { ...NAME, ...works })
    const id = (await device.user())?.id ?? ''
    const told = async () => {
      const needs = await needsFor(id, eveningId)
      if (!needs.ok) throw new Error(needs.error.kind)
      return needs.value
    }
    return { told, cook: (await seatOf(id, eveningId))?.cook ?? '', id }
  }
  const here = await sitDown({ works: 'here' })
  expect(await here.told()).toMatchObject({ scope: 'all', needs: [{ need: 'no-nuts', guests: 1 }], named: [] })
  const far = await sitDown({ works: 'home', minutes: '30' })
  expect(await far.told()).toEqual({ scope: 'none', needs: [], unknown: 0, courses: [], named: [] })

  const before = await parts.rooms.read(eveningId)
  const home = before.cooks.find(({ id }) => id === far.cook)?.presence[0]?.kitchen ?? ''
  const [dish] = before.dishes
  if (!dish) throw new Error('the demo has no dish')
  await parts.rooms.edit(eveningId, (doc) => {
    setDishKitchen(doc, before, dish.id, home, { id: 'the-way', does: 'Carry it' })
  })
  expect(await far.told()).toMatchObject({ scope: 'dishes', needs: [{ need: 'no-nuts', guests: 1 }], courses: [], named: [] })
  expect(JSON.stringify(await far.told())).not.toContain('Planted')

  // They lead the course: it is theirs to put on the plates, and then they must know whose is whose.
  await parts.rooms.edit(eveningId, (doc) => {
    setFields(doc, 'courses', dish.course, { lead: far.cook })
  })
  expect(await far.told()).toMatchObject({ scope: 'dishes', courses: [dish.course], named: [{ name: 'Planted Name' }] })
  expect(await outcome(setCook(far.id, eveningId, (await seatOf(far.id, eveningId))?.memberId ?? '', null))).toBe('done')
  expect(await far.told()).toMatchObject({ scope: 'none', named: [] })
})
