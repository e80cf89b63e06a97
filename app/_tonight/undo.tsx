'use client'

import { toldText } from '#app/_words/night-told.ts'
import css from './now.module.css'
import { useNight } from './use-night.ts'

/** What was told last, for 20 s with the way back. */
export function Undo() {
  const { last, names, evening, takeBack } = useNight()
  if (!last) return null
  return (
    <div className={css.undo}>
      <span>{toldText(last.say, names, evening.zone)}</span>
      <button type="button" onClick={takeBack}>
        Take it back
      </button>
    </div>
  )
}
