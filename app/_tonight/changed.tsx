'use client'

import { changesText, isMuch, muchText } from '#app/_words/night-change.ts'
import css from './board.module.css'
import { useChanges } from './use-changes.ts'
import { useNight } from './use-night.ts'

/** So many cooks are told of by name and thing; of more only that much has changed. */
const LINES = 2

/** What a new order changed, in one line for each cook whose board it is; said to a screen reader when there is time. */
export function Changed() {
  const { evening, names, cook, refused } = useNight()
  const changes = useChanges()
  const cooks = changes.filter((one) => one.cook !== null)
  const much = cook !== null ? [] : cooks.length > LINES ? cooks : cooks.filter((one) => isMuch(one.changes))
  const told = changes.filter((one) => !much.includes(one))
  return (
    <div className={css.changed} role="status">
      {told.map((one) => (
        <p key={one.cook ?? ''}>
          {cook === null && one.cook !== null ? <b>{names.cookName(one.cook)}: </b> : null}
          {changesText(one.changes, names, evening.zone)}
        </p>
      ))}
      {much.length > 0 ? (
        <p>
          {muchText(
            much.flatMap((one) => one.cook ?? []),
            names,
          )}
        </p>
      ) : null}
      {refused ? <p className={css.late}>{refused}</p> : null}
    </div>
  )
}
