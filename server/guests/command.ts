import { z } from 'zod'
import { Id, line } from '#lib/domain/atoms.ts'
import { Guest } from '#lib/domain/people.ts'
import { isDate } from '#lib/domain/time.ts'
import { Email } from '#server/auth/accounts.ts'
import { LEAST_KEEP_DAYS, MOST_KEEP_DAYS } from './kept.ts'
import { MOST_PLACES } from './most.ts'

const name = z.string().trim().min(1, 'must not be empty').pipe(line(80))
const Places = z.int().min(1).max(MOST_PLACES)
const Day = z.string().refine(isDate, 'must be a date, yyyy-mm-dd')

/** What a host writes of a guest; everything but the name may be left open. */
export const Written = z.strictObject({ ...Guest.shape, name }).omit({ id: true })
export type Written = z.infer<typeof Written>

/** What a host may do about guests: the body of POST /api/evenings/ID/guests. */
export const GuestCommand = z.discriminatedUnion('kind', [
  /** Makes a link for a household: for these guests, who have none yet, and for new ones of these names. `send`: by e-mail too. */
  z.strictObject({
    kind: z.literal('invite'),
    label: name,
    places: Places,
    guests: z.array(Id).max(MOST_PLACES).default([]),
    names: z.array(name).max(MOST_PLACES).default([]),
    email: Email.optional(),
    send: z.boolean().default(false),
  }),
  /** A new link in place of the old one, which opens nothing any more. */
  z.strictObject({ kind: z.literal('rotate'), invitation: Id, send: z.boolean().default(false) }),
  /** The link opens nothing any more; what was answered stays. */
  z.strictObject({ kind: z.literal('revoke'), invitation: Id }),
  /** Takes the invitation out of the list; its guests stay, as written by the host. */
  z.strictObject({ kind: z.literal('forget'), invitation: Id }),
  z.strictObject({
    kind: z.literal('change'),
    invitation: Id,
    label: name.optional(),
    places: Places.optional(),
    email: Email.nullable().optional(),
  }),
  /** Sends a reminder by e-mail: the link is in the letter before it. */
  z.strictObject({ kind: z.literal('remind'), invitation: Id }),
  z.strictObject({ kind: z.literal('add'), guest: Written }),
  /** What was told by phone: only the fields that are there change; `arrives: null` takes the time away. */
  z.strictObject({
    kind: z.literal('set'),
    guest: Id,
    change: Written.partial().extend({ arrives: z.nullable(Guest.shape.arrives) }),
  }),
  z.strictObject({ kind: z.literal('remove'), guest: Id }),
  z.strictObject({
    kind: z.literal('replies'),
    closed: z.boolean().optional(),
    /** The last day on which guests may change their answer; null: until replies are closed. */
    answerBy: Day.nullable().optional(),
    sharesMenu: z.boolean().optional(),
    /** Where it is, as guests are told. */
    place: z.optional(line(200)),
    /** Days after the evening that guests and their answers are kept. */
    keepDays: z.int().min(LEAST_KEEP_DAYS).max(MOST_KEEP_DAYS).optional(),
  }),
])
export type GuestCommand = z.input<typeof GuestCommand>
type Read<K> = Extract<z.infer<typeof GuestCommand>, { kind: K }>
export type Invite = Read<'invite'>
export type Change = Read<'change'>
export type Add = Read<'add'>
export type SetGuest = Read<'set'>
export type SetReplies = Read<'replies'>
export type ReadCommand = z.infer<typeof GuestCommand>

/** What came of a command. `path`: where the new link leads on this site; it is told once, as only its hash is kept. */
export type Done =
  | { readonly kind: 'done' }
  | { readonly kind: 'link'; readonly invitation: string; readonly path: string; readonly sent: boolean }
