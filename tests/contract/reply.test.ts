import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import type { Live } from '#server/live.ts'
import { openLiveParts } from '#tests/support/live-parts.ts'
import { formOf, wordsOf } from '#tests/support/posted-form.ts'
import { getReply, postReply, type ReplyScene, replyScene } from '#tests/support/reply-scene.ts'

let parts: Live & { readonly close: () => Promise<void> }
let scene: ReplyScene
beforeAll(async () => {
  parts = await openLiveParts()
  scene = await replyScene()
})
afterAll(() => parts.close())

/** All that the server prints. */
let printed = ''
const methods = ['log', 'info', 'warn', 'error', 'debug'] as const
beforeEach(() => {
  printed = ''
  for (const method of methods)
    vi.spyOn(console, method).mockImplementation((...said) => {
      printed += `${said.join(' ')}\n`
    })
})
afterEach(() => vi.restoreAllMocks())

const invite = async (label: string, places = 1, at = scene): Promise<string> => {
  const path = await at.ask({ kind: 'invite', label, names: [label], places })
  if (path === null) throw new Error('no link')
  return path
}
const lineOf = async (label: string) => {
  const found = (await scene.table()).invitations.find((line) => line.label === label)
  if (!found) throw new Error(`no invitation for ${label}`)
  return found
}
const guestOf = async (name: string) => (await scene.table()).guests.find((guest) => guest.name === name)

/** The form of a page, with some fields filled in as a person would. */
const filled = (page: string, fields: Readonly<Record<string, string | null>>): URLSearchParams => {
  const form = formOf(page, 'data-answer')
  if (!form) throw new Error('the page has no form')
  for (const [name, value] of Object.entries(fields)) {
    if (value === null) form.delete(name)
    else form.set(name, value)
  }
  form.set('do', 'answer')
  return form
}

const folder = async (): Promise<string> => {
  const files = await parts.db.$queryRaw<{ file: string }[]>`PRAGMA database_list`
  return dirname(files[0]?.file ?? '')
}

const filesIn = (path: string): string[] =>
  readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesIn(join(path, entry.name)) : [join(path, entry.name)],
  )

/** The files of the data folder in which some bytes stand. */
const filesWith = async (word: string): Promise<string[]> =>
  filesIn(await folder()).filter((file) => readFileSync(file).includes(word))

const everything = async (): Promise<string> => {
  const { db } = parts
  return JSON.stringify([
    await db.invitation.findMany(),
    await db.guest.findMany({ include: { free: true } }),
    await db.replies.findMany(),
    await db.planUpdate.count(),
  ])
}

test('I10 links that never were, or ended in any way, are answered alike; only a hash of a token is kept', async () => {
  const [withdrawn, replaced, erased] = [await invite('Withdrawn'), await invite('Replaced'), await invite('Erased')]
  const token = replaced.slice('/reply/'.length)
  expect(Buffer.from(token, 'base64url')).toHaveLength(16)
  expect(await filesWith(token)).toEqual([])
  expect(await filesWith(createHash('sha256').update(token).digest('base64url'))).not.toEqual([])
  await scene.ask({ kind: 'revoke', invitation: (await lineOf('Withdrawn')).id })
  const renewed = await scene.ask({ kind: 'rotate', invitation: (await lineOf('Replaced')).id })
  expect((await postReply(erased, new URLSearchParams({ do: 'erase', sure: 'yes' }))).location).toBe('/reply/erased')
  const past = await replyScene('2020-03-07')
  const ended = [
    withdrawn,
    replaced,
    erased,
    await invite('Past', 1, past),
    '/reply/AAAAAAAAAAAAAAAAAAAAAA',
    '/reply/x',
    '/reply/..%2f',
  ]
  const pages = await Promise.all(ended.map((path, at) => getReply(path, `gone-${at}`)))
  const posts = await Promise.all(ended.map((path, at) => postReply(path, new URLSearchParams({ do: 'answer' }), `gone-${at}`)))
  const files = await Promise.all(ended.map((path, at) => getReply(`${path}?file`, `gone-${at}`)))
  const answers = [...pages, ...posts, ...files]
  expect(answers[0]?.status).toBe(404)
  expect(answers[0]?.text).toContain('This link opens nothing')
  expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
  expect((await getReply(renewed ?? '')).status).toBe(200)
})

test('I10 a link is good until seven days after the evening, wherever it was moved to', async () => {
  const day = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)
  const statusOf = async (days: number) => {
    const at = await replyScene(day(days))
    return (await getReply(await invite('Late', 1, at))).status
  }
  expect(await statusOf(-6)).toBe(200)
  expect(await statusOf(-9)).toBe(404)
})

test('I10 after twenty links that open nothing an address waits, and nobody else does; good ones are not counted', async () => {
  const good = await invite('Good')
  for (let at = 0; at < 25; at += 1) expect((await getReply(good, 'honest')).status).toBe(200)
  const statuses: number[] = []
  for (let at = 0; at < 21; at += 1) statuses.push((await getReply(`/reply/${String(at).padStart(22, 'A')}`, 'prober')).status)
  expect(statuses).toEqual([...Array.from({ length: 20 }, () => 404), 429])
  const waiting = await Promise.all([getReply(good, 'prober'), getReply('/reply/BBBBBBBBBBBBBBBBBBBBBB', 'prober')])
  expect(waiting.map(({ status }) => status)).toEqual([429, 429])
  expect((await getReply(good, 'honest')).status).toBe(200)
})

test('I10 by one link sixty answers an hour are heard, whatever is in them', async () => {
  const path = await invite('Eager')
  const blank = new URLSearchParams({ revision: 'none' })
  for (let at = 0; at < 60; at += 1) expect((await postReply(path, blank)).status).not.toBe(429)
  expect((await postReply(path, blank)).status).toBe(429)
  expect((await getReply(path)).status, 'it can still be read').toBe(200)
  const other = await invite('Calm')
  expect((await postReply(other, filled((await getReply(other)).text, { 'reply-0': 'yes' }))).status).toBe(303)
})

test('I11 looking at a link and its file changes nothing, and no token is printed', async () => {
  const path = await invite('Looked at')
  const before = await everything()
  for (const asked of [path, `${path}?sent`, `${path}?file`, path]) expect((await getReply(asked)).status).toBe(200)
  expect(await everything()).toBe(before)
  expect(printed).not.toContain(path.slice('/reply/'.length))
})

test('I12 a household answers by the form alone, adds people within its limit, and changes its answer', async () => {
  const path = await invite('Noor', 2)
  const page = await getReply(path)
  const sent = await postReply(
    path,
    filled(page.text, {
      'reply-0': 'yes',
      arrives: '19:30',
      'eats-0': 'but',
      'need-0-0': 'nuts',
      'grade-0-0': 'severe',
      'need-0-1': 'own',
      'own-0-1': 'Kiwi fruit',
      'grade-0-1': 'dislikes',
      'drinks-0': 'none',
      'drives-0': 'yes',
      'words-0': 'We bring <flowers>.',
      'name-1': 'Ilse',
      'plate-1': 'child',
      'eats-1': 'all',
      consent: 'yes',
    }),
  )
  expect([sent.status, sent.location]).toEqual([303, `${path}?sent`])
  expect(await guestOf('Noor')).toMatchObject({
    reply: 'yes',
    arrives: { day: 0, time: '19:30' },
    needs: [
      { need: 'nuts', grade: 'severe' },
      { need: 'kiwi-fruit', grade: 'dislikes' },
    ],
    drinks: 'none',
    drives: true,
    words: 'We bring <flowers>.',
    by: 'guest',
  })
  expect(await guestOf('Ilse')).toMatchObject({ reply: 'yes', child: true, portion: 0.5, needs: [], drinks: 'none', words: '' })
  const thanks = await getReply(`${path}?sent`)
  expect(wordsOf(thanks.text, 'fine')[0]).toMatch(/Noor: comes; severe nuts allergy, .*kiwi fruit.*Ilse: comes; eats everything/)
  // Sent again as it stands, it says the same; then it is changed.
  expect((await postReply(path, filled(thanks.text, {}))).status).toBe(303)
  expect((await guestOf('Ilse'))?.portion).toBe(0.5)
  const again = await getReply(path)
  expect((await postReply(path, filled(again.text, { 'reply-0': 'no' }))).status).toBe(303)
  expect(await guestOf('Noor')).toMatchObject({ reply: 'no', arrives: { day: 0, time: '19:30' } })
  expect(await lineOf('Noor')).toMatchObject({ state: 'answered', consent: true })
})

test('I12 more people than the link is for, and people of another household, are refused', async () => {
  const [path, other] = [await invite('Ruth', 1), await invite('Elsewhere', 1)]
  const form = filled((await getReply(path)).text, { 'reply-0': 'yes' })
  form.set('name-1', 'Stranger')
  form.set('id-1', '')
  const refused = await postReply(path, form)
  expect([refused.status, wordsOf(refused.text, 'late')[0]]).toEqual([409, expect.stringContaining('This link is for 1 at most')])
  const elsewhere = (await guestOf('Elsewhere'))?.id ?? ''
  const forged = filled((await getReply(path)).text, { 'reply-0': 'no', 'id-0': elsewhere })
  expect((await postReply(path, forged)).status).toBe(409)
  expect(await guestOf('Elsewhere')).toMatchObject({ reply: 'waiting' })
  expect(await guestOf('Stranger')).toBeUndefined()
  expect((await getReply(other)).status).toBe(200)
})

test('I12 what is refused is told at its field, and what was written stays', async () => {
  const path = await invite('Jo', 2)
  const form = filled((await getReply(path)).text, {
    'name-0': '',
    'eats-0': 'but',
    'need-0-0': 'sesame',
    'need-0-1': 'own',
    'own-0-1': '???',
    'words-0': 'Half an hour late, perhaps',
    arrives: '25:00',
  })
  const refused = await postReply(path, form)
  expect(refused.status).toBe(422)
  const told = wordsOf(refused.text, 'wrong').join(' ')
  for (const words of ['Write your name', 'how serious it is', 'a word or two of letters', 'as hours and minutes'])
    expect(told).toContain(words)
  expect(wordsOf(refused.text, 'late')[0]).toContain('Tick that they may keep')
  const kept = formOf(refused.text, 'data-answer')
  form.delete('do')
  expect(Object.fromEntries(kept ?? [])).toEqual(Object.fromEntries(form))
  expect(await guestOf('Jo')).toMatchObject({ reply: 'waiting', needs: null })
})

test('I12 an answer begun before another one is told so, and takes its place only when it is sent again', async () => {
  const path = await invite('Kit')
  const [first, second] = [await getReply(path), await getReply(path)]
  expect(
    (
      await postReply(
        path,
        filled(first.text, { 'reply-0': 'yes', 'eats-0': 'but', 'need-0-0': 'fish', 'grade-0-0': 'severe', consent: 'yes' }),
      )
    ).status,
  ).toBe(303)
  const stale = await postReply(path, filled(second.text, { 'reply-0': 'no' }))
  expect([stale.status, wordsOf(stale.text, 'late')[0]]).toEqual([409, expect.stringContaining('after you opened it')])
  expect(await guestOf('Kit')).toMatchObject({ reply: 'yes', needs: [{ need: 'fish', grade: 'severe' }] })
  expect((await postReply(path, filled(stale.text, {}))).status).toBe(303)
  expect(await guestOf('Kit')).toMatchObject({ reply: 'no' })
  // A host who writes something down counts as well.
  const open = await getReply(path)
  await scene.ask({ kind: 'set', guest: (await guestOf('Kit'))?.id ?? '', change: { drives: true } })
  expect((await postReply(path, filled(open.text, { 'reply-0': 'yes' }))).status).toBe(409)
  // Two at once: one is stored.
  const [one, two] = [await getReply(path), await getReply(path)]
  const both = await Promise.all([one, two].map((page) => postReply(path, filled(page.text, { 'reply-0': 'maybe' }))))
  expect(both.map(({ status }) => status).sort()).toEqual([303, 409])
})

test('I12 closed answers are shown and not changed, by the host or by their last day', async () => {
  const path = await invite('Late')
  const before = filled((await getReply(path)).text, { 'reply-0': 'yes' })
  for (const close of [{ closed: true }, { closed: false, answerBy: '2020-01-01' }]) {
    await scene.ask({ kind: 'replies', ...close })
    const page = await getReply(path)
    expect(formOf(page.text, 'data-answer')).toBeNull()
    expect(page.text).toContain('Answers can no longer be changed here')
    expect((await postReply(path, before)).status).toBe(409)
  }
  await scene.ask({ kind: 'replies', answerBy: null })
  expect((await postReply(path, before)).status).toBe(303)
})

/** Puts a copy of the database where migrations put theirs. */
const copyDatabase = async (name: string): Promise<void> => {
  await parts.db.$queryRaw`PRAGMA wal_checkpoint(PASSIVE)`
  mkdirSync(`${await folder()}/copies`, { recursive: true })
  cpSync(`${await folder()}/tableward.db`, `${await folder()}/copies/${name}.db`)
}

test('I12 nobody is added beyond what an evening holds', async () => {
  const full = await replyScene()
  const path = await invite('Ines', 2, full)
  const rest = Array.from({ length: 119 }, (_, at) => ({
    ...{ eveningId: full.eveningId, id: `g${at}`, place: at + 1, name: `Guest ${at}`, reply: 'yes', child: false },
    ...{ portion: 1, drinks: 'unknown', drives: false },
  }))
  await parts.db.guest.createMany({ data: rest })
  const answer = filled((await getReply(path)).text, { 'reply-0': 'yes', 'name-1': 'Jan' })
  const refused = await postReply(path, answer)
  expect([refused.status, wordsOf(refused.text, 'late')[0]]).toEqual([409, expect.stringContaining('This link is for 1 at most')])
  expect((await postReply(path, filled((await getReply(path)).text, { 'reply-0': 'yes' }))).status).toBe(303)
  expect((await full.table()).guests).toHaveLength(120)
})

test('I13 without consent whether they come is stored, and nothing of what they eat or wrote; silence stays unknown', async () => {
  const path = await invite('Sam')
  const come = await postReply(path, filled((await getReply(path)).text, { 'reply-0': 'yes' }))
  expect(come.status).toBe(303)
  expect(await guestOf('Sam')).toMatchObject({ reply: 'yes', needs: null, drinks: 'unknown' })
  const dietary: Record<string, string>[] = [{ 'eats-0': 'all' }, { 'words-0': 'No shellfish, please' }]
  for (const told of dietary) {
    const page = await getReply(path)
    expect((await postReply(path, filled(page.text, told))).status).toBe(422)
    expect(await guestOf('Sam')).toMatchObject({ needs: null, words: '' })
    expect((await postReply(path, filled(page.text, { ...told, consent: 'yes' }))).status).toBe(303)
    await copyDatabase('with-consent')
    if (told['words-0']) expect((await filesWith('No shellfish, please')).length).toBeGreaterThan(1)
    // Taken back: it is gone, as is the consent.
    const back = filled((await getReply(path)).text, { 'eats-0': '', 'words-0': '', consent: null })
    expect((await postReply(path, back)).status).toBe(303)
    expect(await guestOf('Sam')).toMatchObject({ needs: null, words: '' })
    expect(await lineOf('Sam')).toMatchObject({ consent: false })
    expect(await filesWith('No shellfish, please')).toEqual([])
  }
})

test('I13 consent is not taken back while somebody who is left out of the answer has told what they eat', async () => {
  const path = await invite('Vera', 2)
  const both = { 'reply-0': 'yes', 'name-1': 'Wim', 'eats-1': 'all', consent: 'yes' }
  expect((await postReply(path, filled((await getReply(path)).text, both))).status).toBe(303)
  const without = filled((await getReply(path)).text, { consent: null, 'name-1': null })
  expect((await postReply(path, without)).status).toBe(409)
  expect(await lineOf('Vera')).toMatchObject({ consent: true })
  const gone = filled((await getReply(path)).text, { consent: null, 'eats-1': '' })
  expect((await postReply(path, gone)).status).toBe(303)
  expect([(await lineOf('Vera')).consent, (await guestOf('Wim'))?.needs]).toEqual([false, null])
})

test('I14 what is stored of a household is in its file; erased, a word of it is nowhere', async () => {
  const word = 'Zwetschgenbaum'
  await scene.ask({ kind: 'invite', label: 'Quiet', names: ['Quiet'], places: 1 })
  const path =
    (await scene.ask({
      kind: 'invite',
      label: `${word} label`,
      names: [`${word} name`],
      places: 2,
      email: `${word}@mail.example`,
    })) ?? ''
  // Written over several times, so that the database has old bytes of it as well.
  for (let at = 0; at < 5; at += 1) {
    const form = filled((await getReply(path)).text, {
      'reply-0': 'yes',
      'eats-0': 'but',
      'need-0-0': 'own',
      'own-0-0': word,
      'grade-0-0': 'allergy',
      'words-0': `${word} `.repeat(60 - at * 10),
      'name-1': `${word} child`,
      consent: 'yes',
    })
    expect((await postReply(path, form)).status).toBe(303)
  }
  await copyDatabase('before-migration')
  await scene.ask({ kind: 'set', guest: (await guestOf('Quiet'))?.id ?? '', change: { words: 'A line that stays' } })
  const file = JSON.parse((await getReply(`${path}?file`)).text)
  expect(JSON.stringify(file).split(word).length).toBeGreaterThan(6)
  expect(file.invitation).toMatchObject({ email: `${word.toLowerCase()}@mail.example`, consentAt: expect.any(String) })
  expect((await filesWith(word)).length, 'the search sees what is there').toBeGreaterThan(1)

  const unsure = await postReply(path, new URLSearchParams({ do: 'erase' }))
  expect([unsure.status, (await guestOf(`${word} name`))?.reply]).toEqual([422, 'yes'])
  expect((await postReply(path, new URLSearchParams({ do: 'erase', sure: 'yes' }))).status).toBe(303)

  for (const spelling of [word, word.toLowerCase()]) expect(await filesWith(spelling)).toEqual([])
  expect(await filesWith('A line that stays'), 'others are still there').not.toEqual([])
  expect(printed.toLowerCase()).not.toContain(word.toLowerCase())
  expect(JSON.stringify([await parts.rooms.read(scene.eveningId), await scene.table()]).toLowerCase()).not.toContain(
    word.toLowerCase(),
  )
  expect(
    (await scene.table()).invitations.filter(({ state }) => state === 'erased').map(({ label, email }) => [label, email]),
  ).toContainEqual(['', null])
  expect((await getReply(path)).status).toBe(404)
})

test('I14 a guest whom a host takes out is nowhere either', async () => {
  const word = 'Quittenbrot'
  await scene.ask({
    kind: 'add',
    guest: { name: word, reply: 'yes', child: false, portion: 1, needs: null, drinks: 'unknown', drives: false, words: word },
  })
  expect(await filesWith(word)).not.toEqual([])
  await scene.ask({ kind: 'remove', guest: (await guestOf(word))?.id ?? '' })
  expect(await filesWith(word)).toEqual([])
})
