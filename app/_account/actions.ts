'use server'

import { refusedByField, refusedText } from '#app/_words/refused.ts'
import { changePassword, signOutEverywhere, signUp } from '#server/auth/accounts.ts'
import { requireUser } from '#server/auth/who.ts'
import { setChoice } from '#server/notify/choices.ts'
import { tooManyTries } from './tries.ts'

export type SignUpAnswer =
  | { readonly kind: 'done' }
  | { readonly kind: 'refused'; readonly message: string; readonly fields: Readonly<Record<string, string>> }

export const signUpAction = async (data: unknown): Promise<SignUpAnswer> => {
  const made = await signUp(data)
  if (made.ok) return { kind: 'done' }
  switch (made.error.kind) {
    case 'email-taken':
      return { kind: 'refused', message: 'There is an account with this e-mail address already. Sign in instead.', fields: {} }
    case 'too-many-tries':
      return { kind: 'refused', message: tooManyTries(made.error.seconds), fields: {} }
    case 'invalid':
      return { kind: 'refused', message: 'Something needs another look.', fields: refusedByField(made.error.refusals) }
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
