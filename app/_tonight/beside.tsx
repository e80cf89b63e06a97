'use client'

import { clockText, sentence } from '#app/_words/clock.ts'
import { taskText } from '#app/_words/night-call.ts'
import { doneWords } from '#app/_words/night-verb.ts'
import type { CookNow, Task } from '#lib/night/board.ts'
import css from './board.module.css'
import { useNight } from './use-night.ts'

/** What a cook keeps an eye on, and what looks after itself and may be ready early: each can be told from here. */
export function Beside({ one }: { readonly one: CookNow }) {
  const { watching, left } = one
  if (watching.length + left.length === 0) return null
  return (
    <section className={css.beside} aria-label={`Beside it, ${one.cook}`}>
      <Rows title="Keep an eye on" tasks={watching} cook={one.cook} />
      {left.length > 0 ? (
        <details>
          <summary>Looking after itself: {left.length}</summary>
          <Rows tasks={left} cook={one.cook} />
        </details>
      ) : null}
    </section>
  )
}

function Rows({ title, tasks, cook }: { readonly title?: string; readonly tasks: readonly Task[]; readonly cook: string }) {
  const { evening, names, tell } = useNight()
  if (tasks.length === 0) return null
  return (
    <>
      {title ? <h2>{title}</h2> : null}
      <ul>
        {tasks.map((task) => {
          const what = sentence(taskText(task, names))
          const word = doneWords(
            { ...task, touch: task.care === 'leave' ? { what: 'out', at: task.end, does: null } : null },
            names,
          )
          return (
            <li key={`${task.step} ${task.batch}`}>
              <span>
                {what}, until {clockText(task.end, evening.zone)}
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
    </>
  )
}
