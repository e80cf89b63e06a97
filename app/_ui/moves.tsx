'use client'

import { useEffect, useRef } from 'react'
import css from './moves.module.css'

interface Props {
  readonly name: string
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly onMove: (by: -1 | 1) => void
  readonly onRemove: () => void
  /** Other lists that it can go to, as names to choose from. */
  readonly into?: readonly (readonly [list: string, name: string])[]
  readonly onInto?: (list: string) => void
  /** It has just been moved here from another list: the button that did it keeps the focus. */
  readonly focus?: -1 | 1 | null
}

/** Up, down, elsewhere, away: the same for courses, dishes, steps and drinks. */
export function Moves({ name, isFirst, isLast, onMove, onRemove, into = [], onInto, focus = null }: Props) {
  const up = useRef<HTMLButtonElement>(null)
  const down = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (focus !== null) (focus === -1 ? up : down).current?.focus()
  }, [focus])
  return (
    <span className={css.moves}>
      <button
        ref={up}
        type="button"
        aria-disabled={isFirst}
        onClick={() => isFirst || onMove(-1)}
        aria-label={`Move ${name} up`}
        title="Move up"
      >
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M3.5 11.5L9 6l5.500 5.500" />
        </svg>
      </button>
      <button
        ref={down}
        type="button"
        aria-disabled={isLast}
        onClick={() => isLast || onMove(1)}
        aria-label={`Move ${name} down`}
        title="Move down"
      >
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M3.500 6.500L9 12l5.500-5.500" />
        </svg>
      </button>
      {into.length > 0 ? (
        <select
          className={css.into}
          aria-label={`Move ${name} to`}
          value=""
          onChange={(event) => {
            if (event.target.value) onInto?.(event.target.value)
          }}
        >
          <option value="">Move to</option>
          {into.map(([list, words]) => (
            <option key={list} value={list}>
              {words}
            </option>
          ))}
        </select>
      ) : null}
      <button type="button" className={css.away} onClick={onRemove} aria-label={`Remove ${name}`}>
        Remove
      </button>
    </span>
  )
}
