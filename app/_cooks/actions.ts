'use server'

import { revalidatePath } from 'next/cache'
import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import { requireUser } from '#server/auth/who.ts'
import { addMember, removeMember, setCook } from '#server/evenings/members.ts'

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
