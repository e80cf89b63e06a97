import type { ReactNode } from 'react'
import css from './cloth.module.css'

/** A cloth on the page: what belongs to the table lies on it. */
export function Cloth({
  children,
  small = false,
  label,
}: {
  readonly children: ReactNode
  readonly small?: boolean
  readonly label?: string
}) {
  return (
    <section className={small ? css.small : css.cloth} aria-label={label}>
      {children}
    </section>
  )
}
