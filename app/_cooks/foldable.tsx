import type { ReactNode } from 'react'
import css from './foldable.module.css'

interface Props {
  readonly name: string
  /** A word or two beside the name. */
  readonly about?: string
  readonly isOpen: boolean
  readonly onToggle: () => void
  /** What moves and removes it; shown while it is open. */
  readonly moves: ReactNode
  /** Beside its name, such as who is there. */
  readonly beside?: ReactNode
  readonly children: ReactNode
}

/** One of a list: its name opens it, and opened it lies on a cloth of its own. */
export function Foldable({ name, about, isOpen, onToggle, moves, beside, children }: Props) {
  return (
    <div className={isOpen ? css.open : css.closed}>
      <div className={css.head}>
        <h3>
          <button type="button" className={css.name} aria-expanded={isOpen} onClick={onToggle}>
            {name}
            {about ? <small> {about}</small> : null}
          </button>
        </h3>
        {beside}
        {isOpen ? moves : null}
      </div>
      {children}
    </div>
  )
}
