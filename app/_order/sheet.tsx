import type { ReactNode } from 'react'
import { type Picture, viewOf } from './picture/picture.ts'
import css from './picture.module.css'

/** One of the drawings, as large as the whole; what is cut off below is empty. Each is laid out and painted by itself. */
export function Sheet({
  picture,
  tone,
  children,
}: {
  readonly picture: Picture
  readonly tone: string
  readonly children: ReactNode
}) {
  return (
    <svg className={`${css.drawing} ${tone}`} {...viewOf(picture)} aria-hidden="true">
      {children}
    </svg>
  )
}
