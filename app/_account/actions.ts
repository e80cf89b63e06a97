'use server'

import { listText } from '#app/_words/clock.ts'
import { refusedByField, refusedText } from '#app/_words/refused.ts'
import { changePassword, makeAccount, type SignUpRefusal, signOutEverywhere, signUp } from '#server/auth/accounts.ts'
import { type DeleteRefusal, deleteAccount } from '#server/auth/delete-account.ts'
import { requireUser } from '#server/auth/who.ts'
import { setChoice } from '#server/notify/choices.ts'
import { tooManyTries } from './tries.ts'

export type SignUpAnswer =
  | { readonly kind: 'done' }
  | { readonly kind: 'refused'; readonly message: string; readonly fields: Readonly<Record<string, string>> }

export const signUpAction = async (data: unknown): Promise<SignUpAnswer> => {
  const made = await signUp(data)
  return made.ok ? { kind: 'done' } : refusedSignUp(made.error)
}

const refusedSignUp = (refusal: SignUpRefusal): SignUpAnswer => {
  switch (refusal.kind) {
    case 'email-taken':
      return { kind: 'refused', message: 'There is an account with this e-mail address already. Sign in instead.', fields: {} }
    case 'too-many-tries':
      return { kind: 'refused', message: tooManyTries(refusal.seconds), fields: {} }
    case 'invalid':
      return { kind: 'refused', message: 'Something needs another look.', fields: refusedByField(refusal.refusals) }
  }
}

export type PasswordAnswer =
  | { readonly kind: 'none' }
  | { readonly kind: 'done' }
  | { readonly kind: 'refused'; readonly message: string }

export const changePasswordAction = async (_before: PasswordAnswer, form: FormData): Promise<PasswordAnswer> => {
  const user = await requireUser()
  const changed = await changePassword(user.id, {
    current: String(form.get('current') ?? ''),
    next: String(form.get('next') ?? ''),
  })
  if (changed.ok) return { kind: 'done' }
  switch (changed.error.kind) {
    case 'wrong-password':
      return { kind: 'refused', message: 'That is not the password you have now.' }
    case 'too-many-tries':
      return { kind: 'refused', message: tooManyTries(changed.error.seconds) }
    case 'invalid':
      return { kind: 'refused', message: changed.error.refusals.map(refusedText).join(' ') }
  }
}

/** Whether it was done: the seat may be gone. */
export const setNoticeAction = async (data: unknown): Promise<boolean> => {
  const user = await requireUser()
  return setChoice(user.id, data, Date.now())
}

export const signOutEverywhereAction = async (): Promise<void> => {
  const user = await requireUser()
  await signOutEverywhere(user.id)
}

/** An e-mail address and a password for somebody who came by a link. Their sessions end: the page signs in again. */
export const makeAccountAction = async (data: unknown): Promise<SignUpAnswer> => {
  const user = await requireUser()
  const made = await makeAccount(user.id, data)
  if (made.ok) return { kind: 'done' }
  return made.error.kind === 'has-account'
    ? { kind: 'refused', message: 'You have an account already. Load the page again.', fields: {} }
    : refusedSignUp(made.error)
}

export const deleteAccountAction = async (typed: string): Promise<PasswordAnswer> => {
  const user = await requireUser()
  const deleted = await deleteAccount(user.id, typed)
  return deleted.ok ? { kind: 'done' } : { kind: 'refused', message: deleteRefusedText(deleted.error) }
}

const deleteRefusedText = (refusal: DeleteRefusal): string => {
  switch (refusal.kind) {
    case 'wrong-password':
      return 'That is not your password. Nothing was deleted.'
    case 'not-the-name':
      return 'That is not your name, letter by letter. Nothing was deleted.'
    case 'too-many-tries':
      return tooManyTries(refusal.seconds)
    case 'last-host':
      return `Nothing was deleted. Others cook at ${listText(refusal.evenings.map(({ name }) => `“${name}”`))}: make one of them a host there first, or delete it.`
  }
}
