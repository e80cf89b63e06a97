'use client'

import { useActionState, useEffect, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { createEveningAction, type NewAnswer } from './actions.ts'
import css from './evenings.module.css'

const inTwoWeeks = (today: string): string =>
  new Date(Date.parse(`${today}T12:00:00Z`) + 12 * 86_400_000).toISOString().slice(0, 10)

/** A name, a day, an hour, how many: an evening begins with four things. */
export function NewForm({ today }: { readonly today: string }) {
  const start: NewAnswer = {
    values: { name: '', date: inTwoWeeks(today), sitDown: '19:30', covers: '6', zone: '' },
    message: null,
    fields: {},
  }
  const [answer, send, busy] = useActionState(createEveningAction, start)
  const [zone, setZone] = useState('Europe/London')
  useEffect(() => setZone(Intl.DateTimeFormat().resolvedOptions().timeZone || 'Europe/London'), [])
  const { values, fields } = answer
  return (
    <form className={css.form} action={send} aria-label="A new evening">
      {answer.message ? <Notice>{answer.message}</Notice> : null}
      <Field label="What is it called?" name="name" defaultValue={values.name} required maxLength={120} error={fields.name} />
      <div className={css.three}>
        <Field label="Day" name="date" type="date" defaultValue={values.date} required error={fields.date} />
        <Field label="Sit down at" name="sitDown" type="time" defaultValue={values.sitDown} required error={fields.sitDown} />
        <Field
          label="For how many?"
          name="covers"
          type="number"
          min={1}
          max={60}
          defaultValue={values.covers}
          required
          error={fields.covers}
        />
      </div>
      <input type="hidden" name="zone" value={zone} />
      <p className={css.zone}>
        Times are those of {zone.replaceAll('_', ' ')}.{fields.zone ? ` ${fields.zone}` : ''}
      </p>
      <div>
        <Button type="submit" large disabled={busy}>
          {busy ? 'Laying the table…' : 'Plan this evening'}
        </Button>
      </div>
    </form>
  )
}
