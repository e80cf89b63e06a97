'use client'

import type { Names } from '#app/_words/names.ts'
import type { Board } from '#lib/night/board.ts'
import type { Said } from '#lib/plan/say.ts'
import css from './board.module.css'
import { useNight } from './use-night.ts'

interface GuestTap {
  readonly words: string
  readonly said: Said
  /** It is the next thing to say. */
  readonly isMain: boolean
}

/** A course with steps left may be told to be out from so long before it; the plates' page has it earlier. */
const NEAR_MIN = 5

/** What can be told of the guests and their plates just now. */
const guestTaps = (board: Board, names: Names): readonly GuestTap[] => {
  const { guests, course } = board
  const eating: readonly GuestTap[] =
    guests.kind !== 'eating'
      ? []
      : [
          ...(guests.isNearlyDone
            ? []
            : [{ words: 'Nearly finished', said: { kind: 'nearly', course: guests.course }, isMain: true } satisfies GuestTap]),
          { words: 'Plates off', said: { kind: 'plates-off', course: guests.course }, isMain: guests.isNearlyDone },
        ]
  if (!course || !(course.inMinutes <= NEAR_MIN || course.isReady)) return eating
  const out: GuestTap = {
    words: `${names.courseName(course.course)} to table`,
    said: { kind: 'to-table', course: course.course },
    isMain: course.isReady,
  }
  return course.isReady ? [out, ...eating] : [...eating, out]
}

/** To table, nearly finished, plates off: whichever can be said now. */
export function GuestTaps() {
  const { board, names, tell, cook } = useNight()
  if (!board) return null
  const taps = guestTaps(board, names)
  if (taps.length === 0) return null
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset of inputs
    <div className={css.taps} role="group" aria-label="The guests and their plates">
      {taps.map(({ words, said, isMain }) => (
        <button key={words} type="button" className={isMain ? css.act : css.soft} onClick={() => tell(said, cook ?? undefined)}>
          {words}
        </button>
      ))}
    </div>
  )
}
