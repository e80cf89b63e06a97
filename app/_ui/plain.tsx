import type { ReactNode } from 'react'
import css from './plain.module.css'

/** A page that is a heading and some words. */
export function Plain({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <main id="main" className={css.plain}>
      <h1>{title}</h1>
      {children}
    </main>
  )
}
