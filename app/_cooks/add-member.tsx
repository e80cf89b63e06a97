'use client'

import { useActionState, useId } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import fieldCss from '#app/_ui/field.module.css'
import { Field } from '#app/_ui/field.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { addMemberAction } from './actions.ts'
import css from './cooks.module.css'
import type { Member } from './member.ts'

/** Lets an account in, by its e-mail address. */
export function AddMember({ eveningId, members }: { readonly eveningId: string; readonly members: readonly Member[] }) {
  const { evening } = usePlan()
  const [answer, send, busy] = useActionState(addMemberAction.bind(null, eveningId), { email: '', message: null, done: false })
  const id = useId()
  const taken = new Set(members.map((member) => member.cook))
  return (
    <form className={css.add} action={send} aria-label="Add somebody">
      {answer.message ? <Notice tone={answer.done ? 'quiet' : 'late'}>{answer.message}</Notice> : null}
      <p className={css.quiet}>Or let in somebody who has an account here.</p>
      <div className={css.row}>
        <Field
          label="E-mail address of their account"
          name="email"
          type="email"
          defaultValue={answer.email}
          required
          maxLength={200}
          autoComplete="off"
        />
        <div className={fieldCss.field}>
          <label htmlFor={id}>They are</label>
          <select id={id} name="cook" defaultValue="">
            <option value="">not said yet</option>
            {evening.cooks
              .filter((cook) => !taken.has(cook.id))
              .map((cook) => (
                <option key={cook.id} value={cook.id}>
                  {cook.name}
                </option>
              ))}
          </select>
        </div>
      </div>
      <div>
        <Button type="submit" tone="soft" disabled={busy}>
          Let them in
        </Button>
      </div>
    </form>
  )
}
