'use client'

import { sentence } from '#app/_words/clock.ts'
import { PLANNED_AGAIN } from '#app/_words/night-time.ts'
import { beginWords, doneWords, verbOf } from '#app/_words/night-verb.ts'
import { overdueText, whereText } from '#app/_words/night-where.ts'
import { DEFER, donenessText } from '#app/_words/safety.ts'
import { shorten } from '#app/_words/shorten.ts'
import type { Task } from '#lib/night/board.ts'
import type { Said } from '#lib/plan/say.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import { Flame } from './flame.tsx'
import css from './now.module.css'
import { Undo } from './undo.tsx'
import { useChanged } from './use-changes.ts'
import { useNight } from './use-night.ts'

interface Props {
  readonly task: Task
  readonly cook: string
  /** On a device that is everybody's, the name stands before it; on a cook's own as well, for phones are lent. */
  readonly name: string
}

const sizeOf = (line: string): 'short' | 'medium' | 'long' =>
  line.length <= 20 ? 'short' : line.length <= 27 ? 'medium' : 'long'

/** What a cook does now: one verb line, when it is done, where, how warm inside, and the taps. */
export function NowPanel({ task, cook, name }: Props) {
  const { evening, names, last, isFromBefore } = useNight()
  const changed = useChanged(task.step)
  const verb = verbOf(task, names)
  const dish = names.dish(task.dish)?.name
  const where = whereText(task, cook, evening.host, names, evening.zone)
  return (
    <section className={css.now} aria-label={`${name}, now`}>
      <p className={css.who}>
        <Flame />
        <span className={css.name}>{name}, now</span>
        {dish ? <span className={css.of}>for {shorten(dish, 30)}</span> : null}
      </p>
      <h1 className={css.verb} data-size={sizeOf(verb.line)} data-changed={changed || undefined} lang="en">
        {verb.line}
      </h1>
      {last ? (
        <Undo />
      ) : isFromBefore ? (
        <p className={css.where}>{sentence(PLANNED_AGAIN)}, from now on.</p>
      ) : (
        <>
          {task.sign ? <p className={css.sign}>{signText(task.sign)}</p> : null}
          {task.overdue ? <p className={css.overdue}>{overdueText(task.overdue, evening.zone)}</p> : null}
          {where ? <p className={css.where}>{where}</p> : null}
        </>
      )}
      <Inside step={task.step} />
      <Taps task={task} cook={cook} what={verb.line} />
      {verb.rest ? (
        <details className={css.rest}>
          <summary>All its words</summary>
          <p>{verb.rest}</p>
        </details>
      ) : null}
    </section>
  )
}

const signText = (sign: string): string => (/^(until|when|till)\b/i.test(sign) ? sign : `until ${sign}`)

/** How warm it is to be inside, where a step cooks: never left out for want of room. */
function Inside({ step }: { readonly step: string }) {
  const { evening } = useNight()
  const found = donenessOf(evening, step)
  if (!found) return null
  return (
    <p className={`${css.safe} ${found.low ? css.low : ''}`} title={DEFER}>
      {donenessText(found)} The thermometer decides.
    </p>
  )
}

/** What the main tap tells; null where there is nothing to tell, at a look in between. */
const mainSaid = (task: Task): Said | null => {
  if (task.touch !== null && typeof task.touch.what === 'number') return null
  if (task.touch?.what === 'in') return { kind: 'started', step: task.step }
  if (task.batch < task.batches - 1) return task.isBegun ? null : { kind: 'started', step: task.step }
  return { kind: 'done', step: task.step }
}

/** Somebody may say that they are at it before it is done. */
const canBegin = (task: Task): boolean => !task.isBegun && task.touch === null && task.batch === task.batches - 1

const LONGER = [5, 10, 20] as const

function Taps({ task, cook, what }: { readonly task: Task; readonly cook: string; readonly what: string }) {
  const { tell, names } = useNight()
  const said = mainSaid(task)
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset of inputs
    <div className={css.acts} role="group" aria-label={what}>
      {canBegin(task) ? (
        <button
          type="button"
          className={css.begin}
          onClick={() => tell({ kind: 'started', step: task.step }, cook)}
          aria-label={`${beginWords(task)}: ${what}`}
        >
          {beginWords(task)}
        </button>
      ) : null}
      <span className={css.label}>Needs longer, in minutes</span>
      {said ? (
        <button
          type="button"
          className={css.main}
          onClick={() => tell(said, cook)}
          aria-label={`${mainWords(said, task, names)}: ${what}`}
        >
          {mainWords(said, task, names)}
        </button>
      ) : (
        <span />
      )}
      {LONGER.map((minutes) => (
        <button
          key={minutes}
          type="button"
          className={css.longer}
          onClick={() => tell({ kind: 'longer', step: task.step, minutes }, cook)}
          aria-label={`${minutes} minutes longer: ${what}`}
        >
          +{minutes}
        </button>
      ))}
    </div>
  )
}

const mainWords = (said: Said, task: Task, names: Parameters<typeof doneWords>[1]): string =>
  said.kind === 'started' && task.touch === null ? 'Begun' : doneWords(task, names)
