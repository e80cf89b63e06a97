'use client'

import type { ReactNode } from 'react'
import { Entry } from '#app/_ui/drafts.tsx'
import css from './foldable.module.css'
import { Here } from './here.tsx'
import { useWhere } from './where.tsx'

interface Props {
  /** The entry of the plan that it is. */
  readonly id: string
  readonly name: string
  /** A word or two beside the name. */
  readonly about: string
  readonly isOpen: boolean
  readonly onToggle: () => void
  /** What moves and removes it; shown while it is open. */
  readonly moves: ReactNode
  readonly children: ReactNode
}

/** One of a list: its name opens it, and opened it lies on a cloth of its own; others see who has it open. */
export function Foldable({ id, name, about, isOpen, onToggle, moves, children }: Props) {
  useWhere(isOpen ? id : null)
  return (
    <div className={isOpen ? css.open : css.closed}>
      <div className={css.head}>
        <h3>
          <button type="button" className={css.name} aria-expanded={isOpen} onClick={onToggle}>
            {name} <small>{about}</small>
          </button>
        </h3>
        <Here target={id} />
        {isOpen ? moves : null}
      </div>
      <Entry id={id}>{children}</Entry>
    </div>
  )
}
