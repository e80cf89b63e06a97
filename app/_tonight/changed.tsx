'use client'

import { changesText } from '#app/_words/night-change.ts'
import css from './board.module.css'
import { useChanges } from './use-changes.ts'
import { useNight } from './use-night.ts'

/** What a new order changed, in one line for each cook whose board it is; said to a screen reader when there is time. */
export function Changed() {
  const { evening, names, cook, refused } = useNight()
  const changes = useChanges()
  return (
    <div className={css.changed} role="status">
      {changes.map((one) => (
        <p key={one.cook ?? ''}>
          {cook === null && one.cook !== null ? <b>{names.cookName(one.cook)}: </b> : null}
          {changesText(one.changes, names, evening.zone)}
        </p>
      ))}
      {refused ? <p className={css.late}>{refused}</p> : null}
    </div>
  )
}
