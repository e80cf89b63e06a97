import { afterAll, beforeAll, expect, test } from 'vitest'
import { UNANSWERED } from '#lib/domain/people.ts'
import { seatOf } from '#server/auth/seat.ts'
import { createEvening } from '#server/evenings/create.ts'
import { deleteEvening } from '#server/evenings/delete.ts'
import { exportEvening } from '#server/evenings/file.ts'
import { listEvenings } from '#server/evenings/list.ts'
import { addMember, listMembers, removeMember, setCook, setRole } from '#server/evenings/members.ts'
import { GuestCommand } from '#server/guests/command.ts'
import { doGuestCommand } from '#server/guests/do-command.ts'
import { needsFor } from '#server/guests/needs.ts'
import { tableOf } from '#server/guests/table.ts'
import type { Live } from '#server/live.ts'
import { endSeatLink, listSeatLinks, makeSeatLink } from '#server/seats/links.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

const dinner = { name: 'A dinner', date: '2027-03-06', zone: 'Europe/London', sitDown: '19:30', covers: 6 }

/** An evening with one person in each relation to it. */
const table = async () => {
  const [host, cook, removed, stranger, elsewhere, spare, another] = await Promise.all(
    ['Host', 'Cook', 'Removed', 'Stranger', 'Elsewhere', 'Spare', 'Other'].map(somebody),
  ).then((people) => people as [Person, Person, Person, Person, Person, Person, Person])
  const made = await createEvening(host.id, dinner)
  const other = await createEvening(elsewhere.id, dinner)
  if (!made.ok || !other.ok) throw new Error('the evenings were refused')
  const { eveningId } = made.value
  const memberIds = new Map<string, string>()
  for (const person of [cook, removed, another]) {
    const added = await addMember(host.id, eveningId, { email: person.email, role: 'cook', cook: null })
    if (!added.ok) throw new Error(added.error.kind)
    memberIds.set(person.id, added.value.memberId)
  }
  await removeMember(host.id, eveningId, memberIds.get(removed.id) ?? '')
  const people = { host, cook, removed, stranger, elsewhere, nobody: { id: 'nobody', email: '', name: '' } }
  const invited = await doGuestCommand(
    host.id,
    eveningId,
    { kind: 'invite', label: 'Ilse', names: ['Ilse'], places: 1, email: 'ilse@test.example' },
    async () => true,
  )
  const guests = await tableOf(host.id, eveningId)
  if (!invited.ok || invited.value.kind !== 'link' || !guests.ok) throw new Error('the invitation was refused')
  const { invitation } = invited.value
  await makeSeatLink(host.id, eveningId, { for: 'new', label: 'Lou' })
  const links = await listSeatLinks(host.id, eveningId)
  const seatLink = (links.ok && links.value[0]?.id) || 'none'
  const guest = guests.value.guests[0]?.id ?? ''
  return {
    invitation,
    guest,
    eveningId,
    seatLink,
    otherEveningId: other.value.eveningId,
    people,
    spare,
    cookMember: memberIds.get(cook.id) ?? '',
    otherMember: memberIds.get(another.id) ?? '',
  }
}
type Person = Awaited<ReturnType<typeof somebody>>
type Table = Awaited<ReturnType<typeof table>>
type Role = keyof Table['people']

const outcome = async (asked: Promise<{ ok: true } | { ok: false; error: { kind: string } }>): Promise<string> => {
  const answer = await asked
  return answer.ok ? 'done' : answer.error.kind
}

const functions: Record<string, (t: Table, actor: string) => Promise<string>> = {
  seatOf: async (t, actor) => ((await seatOf(actor, t.eveningId)) ? 'done' : 'not-found'),
  listEvenings: async (t, actor) => ((await listEvenings(actor)).some((line) => line.id === t.eveningId) ? 'done' : 'not-found'),
  exportEvening: (t, actor) => outcome(exportEvening(actor, t.eveningId)),
  tableOf: (t, actor) => outcome(tableOf(actor, t.eveningId)),
  needsFor: (t, actor) => outcome(needsFor(actor, t.eveningId)),
  listMembers: (t, actor) => outcome(listMembers(actor, t.eveningId)),
  addMember: (t, actor) => outcome(addMember(actor, t.eveningId, { email: t.spare.email, role: 'cook', cook: null })),
  setCookOfOther: (t, actor) => outcome(setCook(actor, t.eveningId, t.otherMember, null)),
  listSeatLinks: (t, actor) => outcome(listSeatLinks(actor, t.eveningId)),
  makeSeatLink: (t, actor) => outcome(makeSeatLink(actor, t.eveningId, { for: 'new', label: 'Kit' })),
  makeLinkOfOther: (t, actor) => outcome(makeSeatLink(actor, t.eveningId, { for: 'member', member: t.otherMember, out: true })),
  endSeatLink: (t, actor) => outcome(endSeatLink(actor, t.eveningId, t.seatLink)),
  setRole: (t, actor) => outcome(setRole(actor, t.eveningId, t.otherMember, 'host')),
  removeMember: (t, actor) => outcome(removeMember(actor, t.eveningId, t.otherMember)),
  deleteEvening: (t, actor) => outcome(deleteEvening(actor, t.eveningId, dinner.name)),
}

const expected: Record<Role, Record<keyof typeof functions, string>> = {
  // Whoever has an account has no link.
  host: { ...all('done'), makeLinkOfOther: 'has-account' },
  cook: {
    ...all('done'),
    setCookOfOther: 'not-allowed',
    addMember: 'not-allowed',
    makeSeatLink: 'not-allowed',
    makeLinkOfOther: 'not-allowed',
    // A link that is not theirs is as if there were none.
    endSeatLink: 'not-found',
    setRole: 'not-allowed',
    removeMember: 'not-allowed',
    tableOf: 'not-allowed',
    deleteEvening: 'not-allowed',
  },
  removed: all('not-found'),
  stranger: all('not-found'),
  elsewhere: all('not-found'),
  nobody: all('not-found'),
}
function all(kind: string): Record<string, string> {
  return Object.fromEntries(Object.keys(functions).map((name) => [name, kind]))
}

test('A5 each role may what its row says at each function, and nothing else', async () => {
  for (const role of Object.keys(expected) as Role[]) {
    const t = await table()
    const found: Record<string, string> = {}
    for (const [name, ask] of Object.entries(functions)) found[name] = await ask(t, t.people[role].id)
    expect({ role, ...found }).toEqual({ role, ...expected[role] })
  }
})

/** A body for each command about guests: a new command fails here until it stands in this table. */
const commands: Record<GuestCommand['kind'], (t: Table) => GuestCommand> = {
  invite: () => ({ kind: 'invite', label: 'Noor', names: ['Noor'], places: 1 }),
  rotate: ({ invitation }) => ({ kind: 'rotate', invitation }),
  change: ({ invitation }) => ({ kind: 'change', invitation, places: 2 }),
  remind: ({ invitation }) => ({ kind: 'remind', invitation }),
  set: ({ guest }) => ({ kind: 'set', guest, change: { drives: true } }),
  add: () => ({ kind: 'add', guest: { ...UNANSWERED, name: 'Kit' } }),
  replies: () => ({ kind: 'replies', closed: true }),
  revoke: ({ invitation }) => ({ kind: 'revoke', invitation }),
  forget: ({ invitation }) => ({ kind: 'forget', invitation }),
  remove: ({ guest }) => ({ kind: 'remove', guest }),
}

test('I15 each command about guests is a host’s of that evening alone, and what is refused changes nothing', async () => {
  expect(Object.keys(commands).sort()).toEqual(GuestCommand.options.map(({ shape }) => shape.kind.value).sort())
  const t = await table()
  const stored = async () =>
    JSON.stringify(await Promise.all([tableOf(t.people.host.id, t.eveningId), tableOf(t.people.elsewhere.id, t.otherEveningId)]))
  const ask = (actor: string, eveningId: string, kind: GuestCommand['kind']) =>
    outcome(doGuestCommand(actor, eveningId, commands[kind](t), async () => true))
  const before = await stored()
  const roles = Object.keys(expected) as Role[]
  for (const kind of Object.keys(commands) as GuestCommand['kind'][])
    for (const role of roles.filter((each) => each !== 'host')) {
      const found = await ask(t.people[role].id, t.eveningId, kind)
      expect({ kind, role, found }).toEqual({ kind, role, found: role === 'cook' ? 'not-allowed' : 'not-found' })
    }
  // A host elsewhere reaches nobody through their own evening.
  for (const kind of ['rotate', 'change', 'remind', 'set', 'revoke', 'forget', 'remove'] as const)
    expect([kind, await ask(t.people.elsewhere.id, t.otherEveningId, kind)]).toEqual([kind, 'gone'])
  expect(await stored()).toBe(before)
  for (const kind of Object.keys(commands) as GuestCommand['kind'][])
    expect([kind, await ask(t.people.host.id, t.eveningId, kind)]).toEqual([kind, 'done'])
})

test('A5 a cook sets which cook they are themselves, and nobody else; a cook of the plan is one member at most', async () => {
  const t = await table()
  const members = await listMembers(t.people.host.id, t.eveningId)
  if (!members.ok) throw new Error(members.error.kind)
  const hostMember = members.value.find((line) => line.role === 'host')?.id ?? ''
  expect(await outcome(setCook(t.people.cook.id, t.eveningId, hostMember, null))).toBe('not-allowed')
  expect(await outcome(setCook(t.people.cook.id, t.eveningId, t.cookMember, 'cook-1'))).toBe('cook-taken')
  expect(await outcome(setCook(t.people.cook.id, t.eveningId, t.cookMember, 'cook-9'))).toBe('unknown-cook')
  expect(await outcome(setCook(t.people.host.id, t.eveningId, hostMember, null))).toBe('done')
  expect(await outcome(setCook(t.people.cook.id, t.eveningId, t.cookMember, 'cook-1'))).toBe('done')
  expect((await seatOf(t.people.cook.id, t.eveningId))?.cook).toBe('cook-1')
})

test('A5 a member of one evening cannot be reached through another', async () => {
  const t = await table()
  const { elsewhere } = t.people
  expect(await outcome(removeMember(elsewhere.id, t.otherEveningId, t.cookMember))).toBe('not-found')
  expect(await outcome(setCook(elsewhere.id, t.otherEveningId, t.cookMember, null))).toBe('not-found')
  expect(await seatOf(t.people.cook.id, t.eveningId)).not.toBeNull()
})

test('A6 an evening keeps a host, also when two remove each other at once', async () => {
  const t = await table()
  const { host } = t.people
  const members = await listMembers(host.id, t.eveningId)
  if (!members.ok) throw new Error(members.error.kind)
  const hostMember = members.value.find((line) => line.role === 'host')?.id ?? ''
  expect(await outcome(removeMember(host.id, t.eveningId, hostMember))).toBe('last-host')
  const second = await addMember(host.id, t.eveningId, { email: t.spare.email, role: 'host', cook: null })
  if (!second.ok) throw new Error(second.error.kind)
  const both = await Promise.all([
    outcome(removeMember(host.id, t.eveningId, second.value.memberId)),
    outcome(removeMember(t.spare.id, t.eveningId, hostMember)),
  ])
  expect(both.filter((kind) => kind === 'done')).toHaveLength(1)
  expect(await parts.db.member.count({ where: { eveningId: t.eveningId, role: 'host', revokedAt: null } })).toBe(1)
})

test('A6 somebody who was removed comes back with the seat they had', async () => {
  const t = await table()
  const { host, removed } = t.people
  expect(await outcome(addMember(host.id, t.eveningId, { email: removed.email, role: 'cook', cook: null }))).toBe('done')
  expect(await outcome(addMember(host.id, t.eveningId, { email: removed.email, role: 'cook', cook: null }))).toBe(
    'already-member',
  )
  expect(await seatOf(removed.id, t.eveningId)).toMatchObject({ role: 'cook', name: 'Removed' })
  expect(await outcome(addMember(host.id, t.eveningId, { email: 'no.one@test.example', role: 'cook', cook: null }))).toBe(
    'no-such-account',
  )
})
