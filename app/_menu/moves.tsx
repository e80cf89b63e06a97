'use client'

import css from './moves.module.css'

interface Props {
  readonly name: string
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly onMove: (by: -1 | 1) => void
  readonly onRemove: () => void
}

/** Up, down, away: the same three for courses, dishes, steps and drinks. */
export function Moves({ name, isFirst, isLast, onMove, onRemove }: Props) {
  return (
    <span className={css.moves}>
      <button type="button" disabled={isFirst} onClick={() => onMove(-1)} aria-label={`Move ${name} up`} title="Move up">
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M3.5 11.5L9 6l5.500 5.500" />
        </svg>
      </button>
      <button type="button" disabled={isLast} onClick={() => onMove(1)} aria-label={`Move ${name} down`} title="Move down">
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M3.500 6.500L9 12l5.500-5.500" />
        </svg>
      </button>
      <button type="button" className={css.away} onClick={onRemove} aria-label={`Remove ${name}`}>
        Remove
      </button>
    </span>
  )
}
