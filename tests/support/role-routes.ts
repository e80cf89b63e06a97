import { createHash, randomBytes, randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import Database from 'libsql'
import { sources } from '#tests/architecture/tree.ts'
import { sessionCookie } from './session-cookie.ts'

/** Who asks: a guest has a link of the evening and no account; "removed" had a seat, "stranger" has an account and none. */
export const ROLES = ['host', 'cook', 'removed', 'stranger', 'guest', 'nobody'] as const
export type Role = (typeof ROLES)[number]

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'] as const

/** Every way in that the app has, from its files: "GET /evenings/[id]/menu"; methods that a route has not are asked as well. */
export const waysIn = (): readonly string[] =>
  sources(['app'])
    .flatMap(({ path, text }) => {
      const found = /^app\/(.*?)\/?(page\.tsx|route\.ts)$/.exec(path)
      if (!found) return []
      const address = `/${found[1]}`
      if (found[2] === 'page.tsx') return [`GET ${address}`]
      const has = (method: string) => new RegExp(`export (const|async function|function) ${method}\\b`).test(text)
      return METHODS.map((method) => `${method} ${address}${has(method) ? '' : ' (not there)'}`)
    })
    .sort()

/** The exported names of every file of server actions, with the text of each up to the next one. */
export const serverActions = (): readonly { readonly name: string; readonly text: string }[] =>
  sources(['app'])
    .filter(({ text }) => /^'use server'/m.test(text))
    .flatMap(({ path, text }) =>
      text
        .split(/^export const /m)
        .slice(1)
        .map((part) => ({ name: `${path} ${/^\w+/.exec(part)?.[0]}`, text: part })),
    )

interface Server {
  readonly address: string
  readonly dataFolder: string
}

export interface Doors {
  readonly eveningId: string
  /** Another household's link at the same evening. */
  readonly otherLink: string
  /** What a role is answered at a way in; a body, if any, that says nothing. */
  ask(way: string, role: Role): Promise<Response>
  readonly cookieOf: Readonly<Record<Role, string>>
}

/** An evening on a running server with somebody in each role, and two households with links. */
export const openDoors = async ({ address, dataFolder }: Server): Promise<Doors> => {
  const secret = readFileSync(`${dataFolder}/secret`, 'utf8').trim()
  const db = new Database(`${dataFolder}/tableward.db`, { timeout: 5000 })
  const ids = Object.fromEntries(ROLES.map((role) => [role, randomUUID()])) as Record<Role, string>
  const people = ROLES.filter((role) => role !== 'guest' && role !== 'nobody')
  for (const role of people)
    db.prepare('INSERT INTO "User" (id, email, name, passwordHash) VALUES (?, ?, ?, ?)').run([
      ids[role],
      `${ids[role]}@test.example`,
      role,
      'none',
    ])
  const cookies = Object.fromEntries(
    await Promise.all(people.map(async (role) => [role, await sessionCookie(secret, ids[role])])),
  ) as Record<Role, string>
  const asHost = async (path: string, data: unknown) => {
    const answer = await fetch(`${address}${path}`, {
      method: 'POST',
      body: JSON.stringify(data),
      headers: { 'content-type': 'application/json', origin: address, cookie: cookies.host },
    })
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`)
    return (await answer.json()) as Record<string, string>
  }
  const dinner = { name: 'A dinner', date: '2099-03-06', zone: 'Europe/London', sitDown: '19:30', covers: 6 }
  const { id: eveningId = '' } = await asHost('/api/evenings', dinner)
  const seat = db.prepare('INSERT INTO "Member" (id, eveningId, userId, role, revokedAt) VALUES (?, ?, ?, ?, ?)')
  seat.run([randomUUID(), eveningId, ids.cook, 'cook', null])
  seat.run([randomUUID(), eveningId, ids.removed, 'cook', new Date().toISOString()])
  const seatToken = randomBytes(16).toString('base64url')
  db.prepare('INSERT INTO "SeatLink" (id, eveningId, label, tokenHash) VALUES (?, ?, ?, ?)').run([
    randomUUID(),
    eveningId,
    'Somebody',
    createHash('sha256').update(seatToken).digest('base64url'),
  ])
  db.close()
  const invite = async (name: string) =>
    (await asHost(`/api/evenings/${eveningId}/guests`, { kind: 'invite', label: name, names: [name], places: 1 })).path ?? ''
  const [link, otherLink] = [await invite('Own household'), await invite('Other household')]
  const token = link.slice('/reply/'.length)
  // The link's token, wherever a session might be looked for.
  const cookieOf = { ...cookies, guest: `tableward.session=${token}; next-auth.session-token=${token}`, nobody: '' }
  const fill: Readonly<Record<string, string>> = {
    '[id]': eveningId,
    '[dish]': 'no-dish',
    '[token]': token,
    '[name]': 'figtree',
    '[...nextauth]': 'session',
    '[file]': 'no-such-calendar.ics',
    '[sheet]': 'menu',
  }
  return {
    eveningId,
    otherLink,
    cookieOf,
    ask: (way, role) => {
      const [method = '', pattern = ''] = way.split(' ')
      const path = pattern.replace('/join/[token]', `/join/${seatToken}`).replace(/\[[^\]]+\]/g, (name) => fill[name] ?? name)
      const headers: Record<string, string> = { origin: address, cookie: cookieOf[role] }
      if (role === 'guest') headers.authorization = `Bearer ${token}`
      if (method !== 'GET') headers['content-type'] = 'application/json'
      const query = role === 'guest' ? `?token=${token}` : ''
      return fetch(`${address}${path}${query}`, {
        method,
        redirect: 'manual',
        headers,
        ...(method === 'GET' ? {} : { body: '{}' }),
      })
    },
  }
}

/** What an answer means to who asked: "in" is whatever is heard, also when it is then refused for what it says. */
export const meaning = (answer: Response): string => {
  const away = answer.headers.get('location') ?? ''
  if (answer.status === 401 || (answer.status >= 300 && answer.status < 400 && away.includes('/sign-in'))) return 'sign-in'
  const refused: Readonly<Record<number, string>> = { 403: 'not-allowed', 404: 'not-found', 405: 'no-such-method', 429: 'wait' }
  return refused[answer.status] ?? (answer.status < 500 ? 'in' : 'failed')
}
