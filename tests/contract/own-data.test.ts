import { randomUUID } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest'
import { keptEvenings } from '#app/_evenings/kept-evenings.ts'
import { changeText } from '#app/_words/history.ts'
import { POST as stop, GET as stopPage } from '#app/unsubscribe/[token]/route.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { renameDish, setEvening, setFields } from '#lib/plan/commands/set.ts'
import { exportAccount } from '#server/auth/own-data.ts'
import { copyDatabase } from '#server/backup/copies.ts'
import { exportEvening, importEvening } from '#server/evenings/file.ts'
import { readHistory } from '#server/evenings/history.ts'
import { addMember } from '#server/evenings/members.ts'
import { doGuestCommand } from '#server/guests/do-command.ts'
import { eraseOverdue } from '#server/guests/erase-overdue.ts'
import { openMail } from '#server/mail.ts'
import { setChoice } from '#server/notify/choices.ts'
import type { NoticeKind, NoticeWay } from '#server/notify/kinds.ts'
import { tellDue } from '#server/notify/tell-due.ts'
import { addDevice } from '#server/push/devices.ts'
import { keysOf } from '#server/push/keys.ts'
import { openPush } from '#server/push/open-push.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'
import { type MailStub, openMailStub } from '#tests/support/mail-stub.ts'
import { formOf } from '#tests/support/posted-form.ts'
import { pushDevice, unsealed } from '#tests/support/push-device.ts'
import { getReply, postReply, replyScene } from '#tests/support/reply-scene.ts'
import { seatedDevice } from '#tests/support/seated-device.ts'
import { newDataFolder } from '#tests/support/start-server.ts'

let parts: Awaited<ReturnType<typeof openLiveParts>>
let mail: MailStub
const keyFolder = newDataFolder()
beforeAll(async () => {
  parts = await openLiveParts()
  mail = await openMailStub('full@mail.example')
})
afterAll(async () => {
  await mail.close()
  await parts.close()
  rmSync(keyFolder, { recursive: true })
})
afterEach(() => vi.restoreAllMocks())

const DAY = 86_400_000
const answered = async (path: string, fields: Readonly<Record<string, string>>) => {
  const form = formOf((await getReply(path)).text, 'data-answer') ?? new URLSearchParams()
  for (const [name, value] of Object.entries({ 'reply-0': 'yes', do: 'answer', ...fields })) form.set(name, value)
  expect((await postReply(path, form)).status).toBe(303)
}
const folder = async (): Promise<string> => {
  const files = await parts.db.$queryRaw<{ file: string }[]>`PRAGMA database_list`
  return dirname(files[0]?.file ?? '')
}
const filesWith = async (word: string): Promise<readonly string[]> => {
  const path = await folder()
  return readdirSync(path, { recursive: true, encoding: 'utf8', withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => readFileSync(file).includes(word))
}

/** An evening with guests who have answered with a word that stands nowhere else. */
const answeredScene = async (word: string, date = '2099-03-07') => {
  const scene = await replyScene(date)
  const path = (await scene.ask({ kind: 'invite', label: `${word} label`, names: [`${word} name`], places: 1 })) ?? ''
  await answered(path, { 'eats-0': 'but', 'need-0-0': 'vegan', 'words-0': `${word} words`, consent: 'yes' })
  return { ...scene, path }
}

test('DA5 guests and their answers are erased the day after the last one that they were told, and a word of them is nowhere', async () => {
  const scene = await answeredScene('Mirabellenhain')
  const { eveningId, ask, table, path } = scene
  await scene.ask({ kind: 'invite', label: 'Later', names: ['Later'], places: 1 })
  const page = await getReply(path)
  expect(page.text.match(/after Monday 6 April/g)).toHaveLength(2)
  expect((await table()).replies).toMatchObject({ keepDays: 30, keptUntil: '2099-04-06' })
  const copies = `${await folder()}/copies`
  mkdirSync(copies, { recursive: true })
  copyDatabase(`${await folder()}/tableward.db`, `${copies}/before-migration.db`)

  // Somebody agreed to thirty days: they may become fewer, not more.
  await expect(ask({ kind: 'replies', keepDays: 90 })).rejects.toThrow('promised')
  await ask({ kind: 'replies', keepDays: 14 })
  expect((await getReply(path)).text).toContain('after Saturday 21 March')
  expect(JSON.parse((await getReply(`${path}?file`)).text).invitation.keptUntil).toBe('2099-03-21')

  const plan = await parts.rooms.read(eveningId)
  const midnight = epochMsOf({ date: '2099-03-22', zone: plan.zone }, { day: 0, time: '00:00' })
  expect(await eraseOverdue(midnight - 1)).toBe(0)
  expect((await filesWith('Mirabellenhain')).length, 'the search sees what is there').toBeGreaterThan(1)
  expect(await eraseOverdue(midnight)).toBe(1)
  expect(await filesWith('Mirabellenhain')).toEqual([])
  expect(await table()).toMatchObject({ guests: [], invitations: [], erasedAt: new Date(midnight).toISOString() })
  expect(await parts.rooms.read(eveningId)).toEqual(plan)
  expect(await eraseOverdue(midnight + DAY)).toBe(0)
  expect((await getReply(path)).status).toBe(404)
})

test('DA5 an evening that was brought in after its date keeps its guests for its days from then on', async () => {
  const scene = await replyScene('2020-03-07')
  await scene.ask({
    kind: 'add',
    guest: { name: 'Ines', reply: 'yes', child: false, portion: 1, needs: null, drinks: 'unknown', drives: false, words: '' },
  })
  await eraseOverdue(Date.now() + 29 * DAY)
  expect((await scene.table()).guests).toHaveLength(1)
  await eraseOverdue(Date.now() + 32 * DAY)
  expect((await scene.table()).guests).toEqual([])
})

/** A host and a cook with seats, each with a device. */
const seats = async (date = '2099-03-07') => {
  const scene = await replyScene(date)
  const { hostId, eveningId } = scene
  const cook = await somebody('Jonas')
  const plan = await parts.rooms.read(eveningId)
  const [first, second] = plan.cooks.map(({ id }) => id)
  await parts.db.member.updateMany({ where: { eveningId, userId: hostId }, data: { cook: first ?? null } })
  const added = await addMember(hostId, eveningId, { email: cook.email, role: 'cook', cook: second })
  if (!added.ok) throw new Error(added.error.kind)
  return { ...scene, cook, second: second ?? '', memberId: added.value.memberId, plan }
}

const historyOf = async (userId: string, eveningId: string) => {
  const read = await readHistory(userId, eveningId, null)
  if (!read.ok) throw new Error(read.error.kind)
  return read.value.lines.map((line) => `${line.by} ${changeText(read.value.evening, line)}`)
}

test('DA6 who changed what is told to hosts, outlives the folding of the log, and holds nothing that was written', async () => {
  const { hostId, eveningId, cook, second, ask, plan } = await seats()
  const [host, jonas] = [await seatedDevice(hostId, eveningId), await seatedDevice(cook.id, eveningId)]
  const [dish] = plan.dishes
  if (!dish) throw new Error('no dish')
  setFields(jonas.client.doc, 'dishes', dish.id, { yields: 9 })
  setFields(jonas.client.doc, 'dishes', dish.id, { yields: 10, notes: 'Sauerampferwiese' })
  await jonas.saved()
  setEvening(host.client.doc, { covers: 9 })
  await host.saved()
  host.client.ask({ op: 'op-history-1', kind: 'claim', target: plan.courses[0]?.id ?? '', cook: second })
  await host.saved()
  await ask({ kind: 'invite', label: 'Sauerampferwiese', names: ['Sauerampferwiese'], places: 1 })
  const told = [
    'Mira invited a household',
    `Mira settled who does “${plan.courses[0]?.name}”`,
    'Mira changed the number of covers of the evening',
    `Jonas changed the notes and for how many it is written of “${dish.name}”`,
    'Mira gave somebody a seat',
  ]
  expect(await historyOf(hostId, eveningId)).toEqual(told)
  // The last one to leave has the log folded.
  host.leave()
  jonas.leave()
  await vi.waitUntil(async () => (await parts.db.planUpdate.count({ where: { eveningId } })) === 0)
  expect(await historyOf(hostId, eveningId)).toEqual(told)
  expect(JSON.stringify(await parts.db.planChange.findMany({ where: { eveningId } }))).not.toContain('Sauerampferwiese')
  expect(await readHistory(cook.id, eveningId, null)).toEqual({ ok: false, error: { kind: 'not-allowed' } })
  expect(await readHistory((await somebody('Lou')).id, eveningId, null)).toEqual({ ok: false, error: { kind: 'not-found' } })
})

test('DA7 all of one’s own is in one file, nothing of others that one may not see, and an evening of it comes in again as it was', async () => {
  const scene = await seats()
  const { hostId, eveningId, cook } = scene
  await scene.ask({ kind: 'invite', label: 'Wacholderheide', names: ['Wacholderheide'], places: 1, email: 'w@mail.example' })
  await addDevice(cook.id, eveningId, pushDevice('secret-endpoint').said)
  await setChoice(cook.id, { eveningId, kind: 'asked', by: 'push', on: true }, Date.now())
  const [host, own] = [await exportAccount(hostId, 0), await exportAccount(cook.id, 0)]
  for (const secret of ['passwordHash', 'tokenHash', 'p256dh', 'secret-endpoint']) expect(`${host}${own}`).not.toContain(secret)
  expect(own).not.toContain('Wacholderheide')
  expect(JSON.parse(own ?? '')).toMatchObject({
    format: 'tableward-account/1',
    account: { name: 'Jonas', email: cook.email },
    evenings: [
      {
        seat: { eveningId, role: 'cook', until: null },
        devices: [{ service: 'https://push.example' }],
        toldOf: [{ kind: 'asked', by: 'push' }],
      },
    ],
  })
  expect(JSON.parse(host ?? '').evenings[0]).toMatchObject({
    invitations: [{ label: 'Wacholderheide', email: 'w@mail.example' }],
  })
  expect(await exportAccount('nobody', 0)).toBeNull()

  const [kept] = await keptEvenings(new File([host ?? ''], 'mine.json'))
  const made = await importEvening(hostId, (await kept?.file.text()) ?? '')
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  expect(await exportEvening(hostId, made.value.eveningId)).toEqual(await exportEvening(hostId, eveningId))
  const single = await exportEvening(hostId, eveningId)
  expect(await keptEvenings(new File([single.ok ? single.value.text : ''], 'one.json'))).toEqual([])
})

/** What goes out, and how it is told when something is due. */
const post = () => {
  const pushed: { to: string; body: Buffer }[] = []
  const push = openPush({
    db: parts.db,
    keys: keysOf(keyFolder),
    contact: 'https://dinner.example',
    post: async (to, _headers, body) => {
      pushed.push({ to: to.href, body })
      return 201
    },
    log: console.error,
  })
  const sending = openMail({ mail: { server: mail.address, from: 'table@mail.example' } })
  const before = mail.letters.length
  return {
    pushed,
    letters: () => mail.letters.slice(before),
    tell: (nowMs: number) => tellDue({ ...parts, mail: sending, push, address: 'https://dinner.example' }, nowMs),
  }
}

/** Soft line ends of quoted-printable (RFC 2045, 6.7) taken out. */
const plain = (text: string): string =>
  text.replace(/=\n/g, '').replace(/=([0-9A-F]{2})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)))

test('NO1 NO2 nobody is told anything until they ask for it, then each thing once, and no name, dish or diet goes out', async () => {
  const scene = await seats()
  const { hostId, eveningId, cook, second, plan } = scene
  const out = post()
  const phone = pushDevice('jonas')
  await addDevice(cook.id, eveningId, phone.said)
  const [host, jonas] = [await seatedDevice(hostId, eveningId), await seatedDevice(cook.id, eveningId)]
  const path = (await scene.ask({ kind: 'invite', label: 'Quittenbaum', names: ['Quittenbaum'], places: 1 })) ?? ''
  // The server's clock writes what was changed when, so the evening is told of from now.
  const evening = { date: plan.date, zone: plan.zone }
  const now = Date.now()
  const happens = async () => {
    renameDish(host.client.doc, plan.dishes[0]?.id ?? '', 'Quittenbaum soup')
    host.client.ask({ op: randomUUID(), kind: 'claim', target: plan.courses[0]?.id ?? '', cook: second })
    await host.saved()
    await jonas.until((client) => client.hello !== null)
    await answered(path, { 'eats-0': 'but', 'need-0-0': 'vegan', consent: 'yes' })
  }
  await happens()
  await out.tell(now + DAY)
  expect([out.letters(), out.pushed]).toEqual([[], []])

  const choose = (userId: string, kind: NoticeKind, by: NoticeWay, on = true) =>
    setChoice(userId, { eveningId, kind, by, on }, now - 1)
  expect(await choose(cook.id, 'reply', 'mail'), 'answers are the hosts’').toBe(false)
  expect(await choose((await somebody('Lou')).id, 'asked', 'mail')).toBe(false)
  for (const kind of ['asked', 'changed', 'ahead'] as const)
    for (const by of ['mail', 'push'] as const) expect(await choose(cook.id, kind, by)).toBe(true)
  for (const kind of ['reply', 'changed', 'asked'] as const) expect(await choose(hostId, kind, 'mail')).toBe(true)

  // What is asked and answered is told at once; the day is told of from six o'clock on, by the clock of the evening.
  const day = new Date(now + 2 * DAY).toISOString().slice(0, 10)
  const six = epochMsOf({ ...evening, date: day }, { day: 0, time: '18:00' })
  const subjects = () => out.letters().map(({ to, text }) => [to.split('-')[0], /^Subject: (.*?):/m.exec(plain(text))?.[1]])
  await out.tell(six - 1)
  expect(subjects().sort()).toEqual([
    ['jonas', 'Something is asked of you'],
    ['mira', 'An answer came'],
  ])
  await out.tell(six - 1)
  expect(out.letters()).toHaveLength(2)
  await parts.db.notice.updateMany({ where: { kind: 'changed' }, data: { toldAt: new Date(now - 1) } })
  await out.tell(six)
  await out.tell(six + 1)
  expect(subjects().slice(2)).toEqual([['jonas', 'An evening of yours has changed']])
  expect(out.pushed.map(({ body }) => JSON.parse(unsealed(body, phone)))).toEqual([
    { notice: 'asked', path: `/evenings/${eveningId}/order` },
    { notice: 'changed', path: `/evenings/${eveningId}/order` },
  ])

  // The day before something that the running order wants done ahead.
  const cue = (await seenOrder(jonas)).cues.find(({ cooks, start }) => cooks.includes(second) && start.slice(0, 10) < plan.date)
  const eve = new Date(Date.parse(cue?.start ?? '') - DAY).toISOString().slice(0, 10)
  await out.tell(epochMsOf({ ...evening, date: eve }, { day: 0, time: '18:30' }))
  expect(subjects().slice(3)).toContainEqual(['jonas', 'There is something to do tomorrow'])

  const words = [
    ...plan.cooks.map(({ name }) => name),
    ...[...plan.dishes, ...plan.courses, ...plan.kitchens].map(({ name }) => name),
    ...plan.ingredients.map(({ food }) => food),
    plan.name,
    'Quittenbaum',
    'vegan',
    'soup',
  ].filter((word) => word.length > 2)
  expect(words.length).toBeGreaterThan(30)
  const said = [
    // The address above it is the reader's own.
    ...out.letters().map(({ text }) => plain(text).replace(/^To: .*$/m, '')),
    ...out.pushed.map(({ body }) => unsealed(body, phone)),
  ]
  for (const text of said)
    expect(words.filter((word) => new RegExp(`\\b${word.replace(/[^\w\s]/g, '.')}\\b`, 'i').test(text))).toEqual([])
  host.leave()
  jonas.leave()
})

const seenOrder = async (device: Awaited<ReturnType<typeof seatedDevice>>) => {
  await device.until(({ orders }) => orders.some(({ kind }) => kind === 'order'))
  const found = device.client.orders.findLast((message) => message.kind === 'order')
  if (found?.kind !== 'order') throw new Error('no order')
  await vi.waitUntil(async () => (await parts.db.storedOrder.count()) > 0)
  return found.order
}

test('NO3 a letter’s own link stops it without an account; looking does not, and a link of one’s own making opens nothing', async () => {
  const scene = await seats()
  const { hostId, eveningId } = scene
  const out = post()
  const path = (await scene.ask({ kind: 'invite', label: 'Ines', names: ['Ines'], places: 1 })) ?? ''
  for (const by of ['mail', 'push']) await setChoice(hostId, { eveningId, kind: 'reply', by, on: true }, Date.now() - 1)
  await answered(path, {})
  await out.tell(Date.now())
  const text = plain(out.letters()[0]?.text ?? '')
  const [, link = ''] =
    /^List-Unsubscribe: +<https:\/\/dinner\.example(\/unsubscribe\/[^>]+)>$/m.exec(text.replace(/\n +/g, ' ')) ?? []
  expect(text).toMatch(/^List-Unsubscribe-Post: List-Unsubscribe=One-Click$/m)
  expect(text.split('\n\n').slice(1).join()).toContain(`https://dinner.example${link}`)
  const at = (address: string) => ({ params: Promise.resolve({ token: address.slice('/unsubscribe/'.length) }) })
  const ask = (address: string) => new Request(`http://localhost${address}`)
  const choices = () =>
    parts.db.notice.findMany({ where: { member: { eveningId } }, select: { by: true }, orderBy: { by: 'asc' } })

  const page = await stopPage(ask(link), at(link))
  expect([page.status, await page.text()]).toEqual([200, expect.stringContaining('<form method="post">')])
  for (const forged of [link.slice(0, -1), link.replace('.reply.', '.asked.'), `${link}.x`, '/unsubscribe/x', '/unsubscribe/..'])
    expect([forged, (await stop(ask(forged), at(forged))).status]).toEqual([forged, 404])
  expect(await choices()).toEqual([{ by: 'mail' }, { by: 'push' }])
  for (let twice = 0; twice < 2; twice += 1) {
    expect((await stop(ask(link), at(link))).status).toBe(200)
    expect(await choices()).toEqual([{ by: 'push' }])
  }
})

test('NO1 what a mail server does not take is tried again', async () => {
  const scene = await seats()
  const out = post()
  await parts.db.user.update({ where: { id: scene.hostId }, data: { email: 'full@mail.example' } })
  const path = (await scene.ask({ kind: 'invite', label: 'Ines', names: ['Ines'], places: 1 })) ?? ''
  await setChoice(scene.hostId, { eveningId: scene.eveningId, kind: 'reply', by: 'mail', on: true }, Date.now() - 1)
  await answered(path, {})
  // Nor does an evening without a plan keep others from being told of theirs.
  const { summary } = await parts.db.evening.findUniqueOrThrow({ where: { id: scene.eveningId } })
  await parts.db.evening.create({ data: { id: 'without-plan', epoch: 'x', summary } })
  const seat = { id: '0', eveningId: 'without-plan', userId: scene.hostId, role: 'host' }
  await parts.db.member.create({ data: seat })
  await parts.db.notice.create({ data: { memberId: seat.id, kind: 'reply', by: 'mail', toldAt: new Date(0) } })
  const said = vi.spyOn(console, 'error').mockReturnValue(undefined)
  await out.tell(Date.now())
  expect([out.letters().length, said.mock.calls.length]).toEqual([0, 2])
  await parts.db.user.update({ where: { id: scene.hostId }, data: { email: 'mira@mail.example' } })
  await out.tell(Date.now())
  expect(out.letters().map(({ to }) => to)).toEqual(['mira@mail.example'])
  await parts.db.evening.delete({ where: { id: 'without-plan' } })
  expect(
    await doGuestCommand(scene.hostId, scene.eveningId, { kind: 'remove', guest: 'nobody' }, async () => false),
  ).toMatchObject({
    ok: false,
  })
})
