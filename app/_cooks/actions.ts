'use server'

import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import { seatOf } from '#server/auth/seat.ts'
import { requireUser, stayIn } from '#server/auth/who.ts'
import { deleteEvening } from '#server/evenings/delete.ts'
import { addMember, removeMember, setCook, setRole } from '#server/evenings/members.ts'
import { endSeatLink, makeSeatLink } from '#server/seats/links.ts'

/** What became of it: null when it was done, else why not. */
export type MemberAnswer = string | null

const page = (eveningId: string): string => `/evenings/${eveningId}/kitchens`

export interface AddAnswer {
  readonly email: string
  readonly message: string | null
  readonly done: boolean
}

export const addMemberAction = async (eveningId: string, _before: AddAnswer, form: FormData): Promise<AddAnswer> => {
  const user = await requireUser()
  const email = String(form.get('email') ?? '').trim()
  const cook = String(form.get('cook') ?? '')
  const role = form.get('role') === 'host' ? 'host' : 'cook'
  const added = await addMember(user.id, eveningId, { email, role, cook: cook === '' ? null : cook })
  if (!added.ok) return { email, message: eveningRefusalText(added.error), done: false }
  revalidatePath(page(eveningId))
  return { email: '', message: `${email} is with you now. The evening is on their list.`, done: true }
}

export const removeMemberAction = async (eveningId: string, memberId: string): Promise<MemberAnswer> => {
  const user = await requireUser()
  const removed = await removeMember(user.id, eveningId, memberId)
  if (!removed.ok) return eveningRefusalText(removed.error)
  revalidatePath(page(eveningId))
  return null
}

export const setCookAction = async (eveningId: string, memberId: string, cook: string | null): Promise<MemberAnswer> => {
  const user = await requireUser()
  const set = await setCook(user.id, eveningId, memberId, cook)
  if (!set.ok) return eveningRefusalText(set.error)
  revalidatePath(page(eveningId))
  return null
}

export const setRoleAction = async (eveningId: string, memberId: string, role: 'host' | 'cook'): Promise<MemberAnswer> => {
  const user = await requireUser()
  const set = await setRole(user.id, eveningId, memberId, role)
  if (!set.ok) return eveningRefusalText(set.error)
  revalidatePath(page(eveningId))
  return null
}

/** For whom: see server/seats/links.ts. */
export type LinkFor =
  | { readonly for: 'cook'; readonly cook: string }
  | { readonly for: 'new'; readonly label: string }
  | { readonly for: 'member'; readonly member: string; readonly out: boolean }

export type LinkAnswer =
  | { readonly kind: 'made'; readonly label: string; readonly path: string }
  | { readonly kind: 'refused'; readonly message: string }

export const makeSeatLinkAction = async (eveningId: string, asked: LinkFor): Promise<LinkAnswer> => {
  const user = await requireUser()
  const made = await makeSeatLink(user.id, eveningId, asked)
  if (!made.ok) return { kind: 'refused', message: eveningRefusalText(made.error) }
  // Who put out their own devices stays in on this one: the new link is shown here and nowhere else.
  if (asked.for === 'member' && asked.out && (await seatOf(user.id, eveningId))?.memberId === asked.member) await stayIn(user.id)
  revalidatePath(page(eveningId))
  return { kind: 'made', ...made.value }
}

export const endSeatLinkAction = async (eveningId: string, id: string): Promise<MemberAnswer> => {
  const user = await requireUser()
  const ended = await endSeatLink(user.id, eveningId, id)
  if (!ended.ok) return eveningRefusalText(ended.error)
  revalidatePath(page(eveningId))
  return null
}

export const deleteEveningAction = async (eveningId: string, _before: MemberAnswer, form: FormData): Promise<MemberAnswer> => {
  const user = await requireUser()
  const deleted = await deleteEvening(user.id, eveningId, String(form.get('name') ?? ''))
  if (!deleted.ok) return eveningRefusalText(deleted.error)
  redirect('/')
}
