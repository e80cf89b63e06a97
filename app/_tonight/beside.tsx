'use client'

import { clockText, sentence } from '#app/_words/clock.ts'
import { taskText } from '#app/_words/night-call.ts'
import { doneWords } from '#app/_words/night-verb.ts'
import type { CookNow, Task } from '#lib/night/board.ts'
import css from './board.module.css'
import { useNight } from './use-night.ts'

interface Watched {
  readonly task: Task
  readonly cook: string
}

/** What cooks keep an eye on, and what looks after itself and may be ready early: each can be told from here. */
export function Beside({ cooks }: { readonly cooks: readonly CookNow[] }) {
  const watching = cooks.flatMap(({ cook, watching: tasks }) => tasks.map((task) => ({ task, cook })))
  const left = cooks.flatMap(({ cook, left: tasks }) => tasks.map((task) => ({ task, cook })))
  const own = left.filter(({ task }, at) => left.findIndex((other) => other.task.step === task.step) === at)
  if (watching.length + own.length === 0) return null
  return (
    <section className={css.beside} aria-label="Beside it">
      {watching.length > 0 ? <h2>Keep an eye on</h2> : null}
      <Rows rows={watching} isNamed={cooks.length > 1} />
      {own.length > 0 ? (
        <details>
          <summary>Looking after itself: {own.length}</summary>
          <Rows rows={own} isNamed={cooks.length > 1} />
        </details>
      ) : null}
    </section>
  )
}

function Rows({ rows, isNamed }: { readonly rows: readonly Watched[]; readonly isNamed: boolean }) {
  const { evening, names, tell } = useNight()
  if (rows.length === 0) return null
  return (
    <ul>
      {rows.map(({ task, cook }) => {
        const what = sentence(taskText(task, names))
        const end: Task['touch'] = task.care === 'leave' ? { what: 'out', at: task.end, does: null } : null
        const word = doneWords({ ...task, touch: end }, names)
        return (
          <li key={`${task.step} ${task.batch}`}>
            <span>
              {isNamed ? <b>{names.cookName(cook)}: </b> : null}
              {what}, until {clockText(task.end, evening.zone)}
              {task.dish ? <small> {names.dishName(task.dish)}</small> : null}
              {task.sign ? <em> {task.sign}</em> : null}
            </span>
            <button type="button" onClick={() => tell({ kind: 'done', step: task.step }, cook)} aria-label={`${word}: ${what}`}>
              {word}
            </button>
            <button
              type="button"
              onClick={() => tell({ kind: 'longer', step: task.step, minutes: 5 }, cook)}
              aria-label={`5 minutes longer: ${what}`}
            >
              +5
            </button>
          </li>
        )
      })}
    </ul>
  )
}
