import { expect, test } from 'vitest'
import { chimeOf, inTurn, lengthOf } from '#app/_alerts/chime.ts'
import { readChoices, writeChoice } from '#app/_alerts/choices.ts'
import { alarmCalls, type Due, dueOf, isLive, ringsOf } from '#app/_alerts/ringing.ts'
import { openRung } from '#app/_alerts/rung.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { calledText, callText } from '#app/_words/alert.ts'
import { type AlertsHere, alertsLine, lackTexts, lockedText } from '#app/_words/alerts-here.ts'
import { awayPage } from '#app/_words/away.ts'
import { namesOf } from '#app/_words/names.ts'
import { readCall } from '#app/_worker/call.ts'
import { wayOf } from '#app/_worker/ways.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { Alert } from '#lib/night/alerts.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const evening = loadEvening('a-lamb')
const [first, second] = evening.cooks.map(({ id }) => id)
const step = evening.steps[0]?.id ?? ''
const course = evening.courses[0]?.id ?? ''
if (!first || !second) throw new Error('the lamb has two cooks')

const MINUTE = 60_000
const NOW = Date.parse('2026-12-12T19:00:00Z')
const at = (minutes: number): string => new Date(NOW + minutes * MINUTE).toISOString()

const alert = (id: string, minutes: number, over: Partial<Alert> = {}): Alert & { readonly firedAt: number } => ({
  id,
  at: NOW + minutes * MINUTE,
  firedAt: NOW + minutes * MINUTE,
  kind: 'begin',
  cooks: [first],
  step,
  ...over,
})
const told = (...facts: NightFact[]): Evening => ({ ...evening, night: facts })
const ids = (due: readonly Due[]): readonly string[] => due.map(({ id }) => id)
const known = (since: number, ...gone: string[]) => ({ told: new Set(gone), since: NOW + since * MINUTE })

test('U71 a device rings once for each call, for its own cook and for everybody; the one on the worktop for all', () => {
  const due = [alert('mine', 0), alert('theirs', 0, { cooks: [second] }), alert('all', 0, { cooks: [] }), alert('mine', 0)]
  const mine = ringsOf(due, evening, known(-60), first, NOW)
  expect(ids(mine.ring)).toEqual(['mine', 'all'])
  expect(ids(ringsOf(due, evening, known(-60), null, NOW).ring)).toEqual(['mine', 'theirs', 'all'])
  expect(mine.settled).toEqual(['mine', 'theirs', 'all'])
  expect(ringsOf(due, evening, known(-60, ...mine.settled), first, NOW)).toEqual({ ring: [], missed: [], settled: [] })
})

test('U71 what is a minute old is told in words, unless it is seen to or is of a time before the device took part', () => {
  const due = [
    alert('fresh', -1),
    alert('late', -2),
    alert('done', -2, { step: 'other' }),
    alert('begun', -2, { step: 'going' }),
    alert('overdue:going:0:begin', -2, { kind: 'overdue', step: 'going' }),
    alert('overdue:going:0:end', -2, { kind: 'overdue', step: 'going' }),
    alert('up', -2, { kind: 'get-up' }),
    alert('served', -2, { kind: 'serve', step: undefined, course }),
    alert('before', -31),
  ]
  const night = told(
    { step: 'other', done: at(-1), by: first },
    { step: 'going', started: at(-1), by: first },
    { course, toTable: at(-1), by: first },
  )
  const found = ringsOf(due, night, known(-30), first, NOW)
  expect(ids(found.ring)).toEqual(['fresh'])
  expect(ids(found.missed)).toEqual(['late', 'overdue:going:0:end'])
  expect(found.settled).toHaveLength(due.length)
  expect(ids(ringsOf(due, told(), known(-30), first, NOW).missed)).toContain('served')
})

test('U71 without a connection the device’s own plan says what is due, by the same ids; only while the evening is on', () => {
  const ahead: readonly Alert[] = [alert('a', -5), alert('b', 0), alert('c', 1)]
  expect(dueOf(ahead, NOW)).toMatchObject([
    { id: 'a', firedAt: NOW - 5 * MINUTE },
    { id: 'b', firedAt: NOW },
  ])
  const begun = { night: 'begun', begun: at(-60), by: first } as const
  expect([isLive(told()), isLive(told(begun)), isLive(told({ ...begun, closed: at(0) }))]).toEqual([false, true, false])
})

test('U71 an alarm rings for everybody, however late, until every cook who is there has confirmed', () => {
  const alarm = { alarm: 'x', dish: evening.dishes[0]?.id ?? '', need: null, at: at(-20), by: first } as const
  const confirmed = evening.cooks.map(({ id }) => ({ cook: id, at: at(-1) }))
  const calls = alarmCalls(told(alarm))
  expect(alarmCalls(told({ night: 'begun', begun: at(-60), closed: at(0), by: first }, alarm))).toEqual([])
  expect(ids(ringsOf(calls, evening, known(0), second, NOW).ring)).toEqual(['alarm:x'])
  expect(ids(alarmCalls(told({ ...alarm, confirmed: confirmed.slice(1) })))).toEqual(['alarm:x'])
  expect(alarmCalls(told({ ...alarm, confirmed }))).toEqual([])
  const gone = { cook: first, gone: at(-30), by: second } as const
  expect(alarmCalls(told({ ...alarm, confirmed: confirmed.slice(1) }, gone))).toEqual([])
  expect(ids(alarmCalls(told({ ...alarm, confirmed: confirmed.slice(1) }, { ...gone, back: at(-10) })))).toEqual(['alarm:x'])
})

test('U71 what was told is remembered across a reload and by every tab, and what cannot be read is begun anew', () => {
  const shelf = pageShelf()
  openRung(shelf, 'e').known(NOW)
  openRung(shelf, 'e').add(['a'], NOW + MINUTE)
  const again = openRung(shelf, 'e')
  again.add(['b'], NOW + 2 * MINUTE)
  expect(openRung(shelf, 'e').known(NOW + 3 * MINUTE)).toEqual({ told: new Set(['a', 'b']), since: NOW })
  expect(openRung(shelf, 'other').known(NOW + MINUTE)).toEqual({ told: new Set(), since: NOW + MINUTE })
  again.add(['c'], NOW + 37 * 60 * MINUTE)
  expect(again.known(NOW).told).toEqual(new Set(['c']))
  shelf.set('tableward/rung/e', '{')
  expect(again.known(NOW + MINUTE)).toEqual({ told: new Set(), since: NOW + MINUTE })
})

test('U71 each of 24 cooks has a chime of their own, known by how it goes, where it is heard best', () => {
  const chimes = Array.from({ length: 24 }, (_, place) => chimeOf(place))
  expect(new Set(chimes.map((chime) => JSON.stringify(chime))).size).toBe(24)
  const goes = chimes.slice(0, 8).map((chime) => chime.map(({ hz }) => Math.round(12 * Math.log2(hz / (chime[0]?.hz ?? 1)))))
  expect(new Set(goes.map(String)).size).toBe(8)
  for (const tone of chimes.flat()) {
    expect(tone.hz).toBeGreaterThan(500)
    expect(tone.hz).toBeLessThan(2500)
  }
  const two = inTurn(chimes.slice(0, 2))
  expect(Math.min(...two.slice(3).map(({ from }) => from))).toBeGreaterThan(lengthOf(chimes[0] ?? []))
})

test('U71 a call names the dish, and whom it calls where it calls for several', () => {
  const names = namesOf(evening)
  const of = names.dishName(names.step(step)?.dish ?? '')
  const kinds = (['begin', 'touch', 'look', 'get-up', 'overdue'] as const).map((kind) => callText(alert('x', 0, { kind }), names))
  expect(new Set(kinds).size).toBe(kinds.length)
  for (const text of kinds) expect(text).toContain(of)
  expect(calledText(alert('x', 0), names).startsWith(names.cookName(first))).toBe(true)
  expect(callText(alert('x', 0, { kind: 'serve', step: undefined, course }), names)).toContain(names.courseName(course))
  expect(callText({ id: 'a', kind: 'alarm', at: 0, cooks: [], dish: 'gone' }, names)).toMatch(/do not serve/)
})

const here: AlertsHere = {
  shape: 'mine',
  choices: { sound: true, speech: false, vibration: true, awake: true },
  sound: 'ready',
  canSpeak: true,
  canVibrate: true,
  awake: 'on',
  calls: { kind: 'on' },
  isPlain: false,
}

test('U73 a page says how it calls, and what it cannot do and why', () => {
  expect(alertsLine(here)).toBe('This device rings, vibrates, stays lit and is called while it sleeps.')
  expect(lackTexts(here)).toEqual([])
  expect(lockedText(here)).toBeNull()
  expect(lockedText({ ...here, sound: 'locked' })).toMatch(/Tap anywhere/)
  const table: AlertsHere = { ...here, shape: 'table', sound: 'locked' }
  expect([alertsLine(table), lockedText(table)]).toEqual([
    'This device vibrates once, stays lit and is called while it sleeps.',
    null,
  ])
  const plain: AlertsHere = { ...here, isPlain: true, awake: 'none', calls: { kind: 'no-worker' }, canVibrate: false }
  expect(alertsLine(plain)).toBe('This device rings.')
  expect(lackTexts(plain)).toEqual([expect.stringMatching(/plain http.*keep this page open/), expect.stringMatching(/vibrate/)])
  const lacks = (over: Partial<AlertsHere>) => lackTexts({ ...here, ...over })
  const each = [
    lacks({ sound: 'none' }),
    lacks({ awake: 'none' }),
    lacks({ awake: 'refused' }),
    lacks({ calls: { kind: 'no-worker' } }),
    lacks({ calls: { kind: 'no-push' } }),
    lacks({ calls: { kind: 'denied' } }),
  ]
  expect(new Set(each.map(String)).size).toBe(each.length)
  for (const texts of each) expect(texts).toHaveLength(1)
})

test('U73 a worktop stays lit until somebody says otherwise; what was chosen stays', () => {
  const shelf = pageShelf()
  expect([readChoices(shelf, 'worktop').awake, readChoices(shelf, 'mine').awake]).toEqual([true, false])
  writeChoice(shelf, 'mine', { speech: true })
  expect(readChoices(shelf, 'mine')).toMatchObject({ speech: true, awake: false })
  shelf.set('tableward/alerts', '[')
  expect(readChoices(shelf, 'worktop')).toMatchObject({ sound: true, awake: true })
})

test('U74 the pages of the night and the built files are kept, and nothing of a person or a guest', () => {
  const origin = 'https://dinner.example'
  const way = (path: string, isPage = true, method = 'GET') => wayOf({ method, isPage, url: new URL(path, origin), origin })
  expect(['/evenings/a-1/tonight', '/evenings/a-1/order?x=1', '/evenings/a-1/shopping'].map((path) => way(path))).toEqual([
    'kept-page',
    'kept-page',
    'kept-page',
  ])
  expect(['/', '/evenings/a-1/menu', '/evenings/a-1/guests', '/evenings/a/tonight/b'].map((path) => way(path))).toEqual(
    Array(4).fill('other-page'),
  )
  for (const path of [
    '/api/evenings/a/guests',
    '/reply/abc',
    '/sign-in',
    '/sign-up',
    '/account',
    'https://other.example/evenings/a/order',
  ])
    for (const isPage of [true, false]) expect([path, way(path, isPage)]).toEqual([path, 'none'])
  expect(way('/evenings/a-1/tonight', true, 'POST')).toBe('none')
  expect(way('/evenings/a-1/tonight?_rsc=1', false)).toBe('none')
  expect(['/_next/static/chunks/a.js', '/mark.svg', '/icons/192.png'].map((path) => way(path, false))).toEqual(
    Array(3).fill('file'),
  )
  expect(['/_next/image?url=x', '/_next/data/x.json', '/sw.js'].map((path) => way(path, false))).toEqual(Array(3).fill('none'))
})

test('U74 without a network another page says so and leads to what is kept, whatever an evening is called', () => {
  const page = awayPage([{ path: '/evenings/a/order', name: '</a><script>x</script>' }])
  expect(page).toContain('href="/evenings/a/order"')
  expect(page).not.toContain('<script')
  expect(awayPage([])).toMatch(/Nothing is kept/)
})

test('U72 a sleeping device hears calls of an evening and nothing else', () => {
  const call = { alert: 'begin:roast:0', path: '/evenings/a-1/tonight' }
  expect(readCall(JSON.stringify(call))).toEqual(call)
  for (const said of ['', '{', 'null', '[]', '{"alert":"x"}', JSON.stringify({ ...call, alert: 1 })])
    expect(readCall(said)).toBeNull()
  for (const path of [
    'https://other.example/',
    '//other.example/tonight',
    '/sign-in',
    '/evenings/a/../../tonight',
    '/evenings/a/order',
  ])
    expect(readCall(JSON.stringify({ ...call, path }))).toBeNull()
})
