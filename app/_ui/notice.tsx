import type { ReactNode } from 'react'
import css from './notice.module.css'

/** Something went wrong, or needs to be known: said at once to a screen reader too. */
export function Notice({ tone = 'late', children }: { readonly tone?: 'late' | 'quiet'; readonly children: ReactNode }) {
  return (
    <div className={tone === 'late' ? css.late : css.quiet} role={tone === 'late' ? 'alert' : 'status'}>
      {children}
    </div>
  )
}
