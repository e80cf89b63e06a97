'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import css from './link-badge.module.css'

/** What could not be read of the shared plan, for its host: nothing of it is lost, but it is not planned. */
export function Reports() {
  const { me, reports } = usePlan()
  if (me?.role !== 'host' || reports.length === 0) return null
  return (
    <details className={css.reports}>
      <summary>Something in this plan could not be taken as it stands</summary>
      <ul>
        {reports.map((report) => (
          <li key={report}>{report}</li>
        ))}
      </ul>
    </details>
  )
}

/** Claims that were asked for before the page was loaded again and have been refused since: nobody else would tell. */
export function Told() {
  const { evening, told, hear } = usePlan()
  if (told.length === 0) return null
  const names = namesOf(evening)
  const nameOf = (target: string): string =>
    names.step(target) ? names.stepName(target) : names.dish(target) ? names.dishName(target) : names.courseName(target)
  return told.map(({ command, outcome }) => (
    <div className={css.notice} role="alert" key={command.op}>
      <p>
        <b>“{nameOf(command.target)}” did not become yours.</b> {refusalText(outcome.why, names)}
      </p>
      <Button tone="soft" onClick={() => hear(command.op)}>
        All right
      </Button>
    </div>
  ))
}
