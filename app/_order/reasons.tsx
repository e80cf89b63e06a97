'use client'

import { becauseParts, becauseText, type Piece, placeAgainst } from '#app/_words/because.ts'
import { clockText } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { useChoose } from './choose.tsx'
import css from './step-panel.module.css'

interface Props {
  readonly cue: Cue
  readonly order: RunningOrder
  readonly names: Names
}

/** How far a step could move, and what holds it then; what is named can be followed. */
export function Reasons({ cue, order, names }: Props) {
  const place = placeAgainst(cue, order.cues)
  const reasons = new Map(cue.because.map((reason) => [becauseText(reason, names, place), reason]))
  const slack = minutesOf(cue.slack)
  const isOver = cue.state === 'done' || cue.state === 'running'
  const until = clockText(Date.parse(cue.start) + slack * 60_000, order.zone)
  return (
    <>
      {isOver ? null : (
        <p className={css.when}>
          {slack > 0 ? `It may start up to ${minutesText(slack)} later, until ${until}.` : 'It cannot start later.'}
          {slack > 0 && reasons.size > 0 ? ' What would hold it then:' : ''}
        </p>
      )}
      {reasons.size > 0 ? (
        <ul className={css.why} aria-label={slack > 0 && !isOver ? 'What would hold it then' : 'Why it is there'}>
          {[...reasons].map(([words, reason]) => (
            <li key={words}>
              <Pieces pieces={becauseParts(reason, names, place)} order={order} />
            </li>
          ))}
        </ul>
      ) : null}
    </>
  )
}

/** A sentence whose names choose what they name. A step that nobody is seen doing is a name alone. */
export function Pieces({ pieces, order }: { readonly pieces: readonly Piece[]; readonly order: RunningOrder }) {
  const { step, chooseThing } = useChoose()
  return pieces.map((piece) => {
    if (typeof piece === 'string') return piece
    const { to, id, words } = piece
    if (to === 'step' && !order.cues.some((cue) => cue.step === id && (cue.cooks.length > 0 || cue.touches.length > 0)))
      return words
    return (
      <button
        key={`${to}.${id}`}
        type="button"
        className={css.link}
        onClick={() => (to === 'step' ? step(id) : chooseThing({ kind: to, id }))}
      >
        {words}
      </button>
    )
  })
}
