'use client'

import { Plate } from '#app/_ui/plate.tsx'
import { clockText, sentence } from '#app/_words/clock.ts'
import { alarmToldText } from '#app/_words/night-alarm.ts'
import { taskText } from '#app/_words/night-call.ts'
import { apartText, fillingText, handsText, plateCount, waitsText } from '#app/_words/night-plating.ts'
import { inText, wholeMinutes } from '#app/_words/night-time.ts'
import { doneWords } from '#app/_words/night-verb.ts'
import type { Board, Task } from '#lib/night/board.ts'
import type { Plating as Page } from '#lib/night/plating.ts'
import { colourOf } from './facts.ts'
import { GuardedPlate } from './guarded-plate.tsx'
import css from './plating.module.css'
import { Undo } from './undo.tsx'
import { useNight } from './use-night.ts'
import { usePlatingPage } from './use-plating.ts'

/** A course is near: leads to its plates. */
export function PlatingOffer() {
  const { names, nowMs } = useNight()
  const { plating, isOpen, open } = usePlatingPage()
  if (!plating || isOpen) return null
  return (
    <button type="button" className={css.offer} onClick={open}>
      Plate {names.courseName(plating.course)}: {plateCount(plating)}, {inText(wholeMinutes(nowMs, plating.toTable))}
    </button>
  )
}

/** How a course gets from the kitchen to the table: everything else is muted, but for what keeps people safe. */
export function Plating({ plating }: { readonly plating: Page }) {
  const { evening, board, names, nowMs, last, tell, cook } = useNight()
  const { close } = usePlatingPage()
  const course = names.courseName(plating.course)
  const waits = waitsText(plating, names)
  const tasks = atHand(board, plating.course)
  const colour = colourOf(evening, plating.course)
  return (
    <section className={css.plating} aria-labelledby="plating">
      <div className={css.head}>
        <h1 id="plating">{course}</h1>
        <p className={css.count}>
          {sentence(plateCount(plating))}, {inText(wholeMinutes(nowMs, plating.toTable))}
          <small>to table {clockText(plating.toTable, evening.zone)}</small>
        </p>
      </div>
      {last ? <Undo /> : null}
      {plating.alarms.map((alarm) => (
        <p key={alarm.alarm} className={css.waits}>
          {alarmToldText(alarm, evening.zone, names)}
        </p>
      ))}
      {waits ? <p className={css.waits}>{waits}</p> : null}
      <ol className={css.fill} aria-label="In this order">
        {plating.fill.map((filling) => {
          const apart = apartText(filling)
          return (
            <li key={filling.dish} className={apart ? css.apart : undefined}>
              {apart ? <GuardedPlate size={64} colour={colour} /> : <Plate size={64} colour={colour} />}
              <div>
                {fillingText(filling, plating.service, names)}
                {apart ? <p>{apart}</p> : null}
              </div>
            </li>
          )
        })}
      </ol>
      {handsText(plating, names).map((line) => (
        <p key={line} className={css.hands}>
          {line}
        </p>
      ))}
      <div className={css.taps}>
        {tasks.map((one) => (
          <PlateStep key={one.task.step} {...one} />
        ))}
        <button
          type="button"
          className={tasks.length === 0 ? css.out : css.step}
          onClick={() => tell({ kind: 'to-table', course: plating.course }, cook ?? undefined)}
        >
          {course} to table
        </button>
        <button type="button" className={css.back} onClick={close}>
          Back to the board
        </button>
      </div>
    </section>
  )
}

interface AtHand {
  readonly task: Task
  readonly cook: string
}

/** The course's own steps that are at hand, each once. */
const atHand = (board: Board | null, course: string): readonly AtHand[] => {
  const all = (board?.now ?? []).flatMap(({ cook, hands, waiting }) =>
    [...(hands ? [hands] : []), ...waiting].filter((task) => task.course === course).map((task) => ({ task, cook })),
  )
  return all.filter(({ task }, at) => all.findIndex((other) => other.task.step === task.step) === at)
}

/** Each can be told done from here. */
function PlateStep({ task, cook }: AtHand) {
  const { names, tell } = useNight()
  const kind = task.touch?.what === 'in' ? 'started' : 'done'
  return (
    <button type="button" className={css.out} onClick={() => tell({ kind, step: task.step }, cook)}>
      {doneWords(task, names)} <small>{taskText(task, names)}</small>
    </button>
  )
}
