'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { refusalText } from '#app/_words/link.ts'
import { type Names, namesOf } from '#app/_words/names.ts'
import type { Say } from '#lib/plan/say.ts'
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

/** After a backup was put back: what this device knew that is not in it. */
export function FromBefore() {
  const { aside } = usePlan()
  if (!aside) return null
  const things = aside.differs === 1 ? 'One thing stands' : `${aside.differs} things stand`
  return (
    <div className={css.notice} role="status">
      <p>
        <b>This evening was put back from a backup.</b> {things} otherwise on this device, as you had it before. Bringing it in
        writes over what was put back there; it can be undone.
      </p>
      <Button onClick={aside.bringIn}>Bring it in</Button>
      <Button tone="soft" onClick={aside.leave}>
        Leave it out
      </Button>
    </div>
  )
}

/** What something told is about, where it is about one thing. */
const aboutText = (say: Say, names: Names): string => {
  if (say.kind === 'take-back') return aboutText(say.said, names)
  if ('step' in say) return ` of “${names.stepName(say.step)}”`
  if ('course' in say) return ` of “${names.courseName(say.course)}”`
  if ('dish' in say) return ` of “${names.dishName(say.dish)}”`
  return 'cook' in say ? ` of ${names.cookName(say.cook)}` : ''
}

/** What was asked for or told before the page was loaded again and has been refused since: nobody else would tell. */
export function Told() {
  const { evening, told, hear } = usePlan()
  if (told.length === 0) return null
  const names = namesOf(evening)
  const nameOf = (target: string): string =>
    names.step(target) ? names.stepName(target) : names.dish(target) ? names.dishName(target) : names.courseName(target)
  return told.map(({ command, outcome }) => (
    <div className={css.notice} role="alert" key={command.op}>
      <p>
        <b>
          {command.kind === 'tell'
            ? `What you told${aboutText(command.say, names)} did not come through.`
            : `“${nameOf(command.target)}” did not become yours.`}
        </b>{' '}
        {refusalText(outcome.why, names)}
      </p>
      <Button tone="soft" onClick={() => hear(command.op)}>
        All right
      </Button>
    </div>
  ))
}
