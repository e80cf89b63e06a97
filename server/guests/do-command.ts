import { refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { noteChange } from '#server/evenings/note-change.ts'
import { live } from '#server/live.ts'
import { type Done, GuestCommand, type ReadCommand } from './command.ts'
import { eraseGuest } from './erase.ts'
import { addGuest, setGuest, setReplies } from './guests.ts'
import { inTurn } from './in-turn.ts'
import { change, forget, invitationOf, invite, type MadeLink, revoke, rotate } from './invitations.ts'
import { requireHost } from './may.ts'
import type { GuestRefusal } from './refusal.ts'

/** What a letter to an invitation's address says; null when there is nothing to write. */
export type Letter = { readonly kind: 'invitation'; readonly path: string } | { readonly kind: 'reminder' }

/** Sends a letter; whether the mail server took it. */
export type SendLetter = (to: string, letter: Letter) => Promise<boolean>

/** Carries out what a host asks about guests, and tells the evening's open pages that there is something new. */
export const doGuestCommand = async (
  userId: string,
  eveningId: string,
  data: unknown,
  send: SendLetter,
): Promise<Result<Done, GuestRefusal>> => {
  const host = await requireHost(userId, eveningId)
  if (!host.ok) return host
  const parsed = GuestCommand.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const done = await carryOut(eveningId, parsed.data, limited(userId, send))
  if (done.ok) {
    live().rooms.tellGuests(eveningId)
    await noteChange(eveningId, host.value.memberId, 'guests', parsed.data.kind)
  }
  return done
}

/** Whoever has an account can write letters to anybody in our name: not without end. */
const limited =
  (userId: string, send: SendLetter): SendLetter =>
  async (to, letter) =>
    (await live().limits.try('letter', userId)) === 0 && (await send(to, letter))

/** A letter goes out after the turn: guests who answer do not wait for a mail server. */
const carryOut = async (eveningId: string, command: ReadCommand, send: SendLetter): Promise<Result<Done, GuestRefusal>> => {
  const turn = <T>(work: () => Promise<T>) => inTurn(eveningId, work)
  switch (command.kind) {
    case 'invite':
      return linked(eveningId, await turn(() => invite(eveningId, command)), command.send ? send : null)
    case 'rotate':
      return linked(eveningId, await turn(() => rotate(eveningId, command.invitation)), command.send ? send : null)
    case 'revoke':
      return done(await turn(() => revoke(eveningId, command.invitation)))
    case 'forget':
      return done(await turn(() => forget(eveningId, command.invitation)))
    case 'change':
      return done(await turn(() => change(eveningId, command)))
    case 'remind':
      return remind(eveningId, command.invitation, send)
    case 'add':
      return done(await turn(() => addGuest(eveningId, command)))
    case 'set':
      return done(await turn(() => setGuest(eveningId, command)))
    case 'remove':
      return done(await turn(() => eraseGuest(eveningId, command.guest)))
    case 'replies':
      return done(await turn(() => setReplies(eveningId, command)))
  }
}

const done = (result: Result<null, GuestRefusal>): Result<Done, GuestRefusal> => (result.ok ? ok({ kind: 'done' }) : result)

const linked = async (
  eveningId: string,
  made: Result<MadeLink, GuestRefusal>,
  send: SendLetter | null,
): Promise<Result<Done, GuestRefusal>> => {
  if (!made.ok) return made
  const { invitation, token } = made.value
  const path = `/reply/${token}`
  const to = (await invitationOf(eveningId, invitation))?.email ?? null
  const sent = send !== null && to !== null && (await send(to, { kind: 'invitation', path }))
  return ok({ kind: 'link', invitation, path, sent })
}

const remind = async (eveningId: string, id: string, send: SendLetter): Promise<Result<Done, GuestRefusal>> => {
  const found = await invitationOf(eveningId, id)
  if (!found) return fail({ kind: 'gone' })
  if (found.revokedAt || found.erasedAt) return fail({ kind: 'withdrawn' })
  if (!found.email || !(await send(found.email, { kind: 'reminder' }))) return fail({ kind: 'no-mail' })
  return ok({ kind: 'done' })
}
