import type { ReactNode } from 'react'
import css from './fold.module.css'

/** Rarer things behind a line that says what they are; they are in the page while they are folded. */
export function Fold({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <details className={css.fold}>
      <summary>{title}</summary>
      {children}
    </details>
  )
}
