import { type InputHTMLAttributes, useId } from 'react'
import css from './field.module.css'

interface Props extends InputHTMLAttributes<HTMLInputElement> {
  readonly label: string
  readonly hint?: string
  readonly error?: string | undefined
}

/** A line to write on, with its label above and what is wrong with it below. */
export function Field({ label, hint, error, ...input }: Props) {
  const id = useId()
  const about = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ')
  return (
    <div className={css.field}>
      <label htmlFor={id}>{label}</label>
      <input id={id} aria-invalid={error ? true : undefined} aria-describedby={about || undefined} {...input} />
      {hint ? (
        <p className={css.hint} id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {error ? (
        <p className={css.error} id={`${id}-error`}>
          {error}
        </p>
      ) : null}
    </div>
  )
}
