import type { Cue, Reason } from '#lib/domain/running-order.ts'
import { sentence } from './clock.ts'
import type { Names } from './names.ts'

/** When the other cue named by a reason runs, against the one that is explained. */
type Place = 'before' | 'after' | 'beside'

/** A piece of a reason: plain words, or the name of what holds the cue. */
export type Piece = string | { readonly to: 'step' | 'kit' | 'cook' | 'course'; readonly id: string; readonly words: string }

/** Why a cue is not later, or not earlier, in one sentence whose names can be followed. */
export const becauseParts = (reason: Reason, names: Names, place: (step: string) => Place): readonly Piece[] => {
  const step = (id: string): Piece => ({ to: 'step', id, words: `“${names.stepName(id)}”` })
  const kit = (id: string): Piece => ({ to: 'kit', id, words: names.kitName(id) })
  const cook = (id: string): Piece => ({ to: 'cook', id, words: names.cookName(id) })
  switch (reason.kind) {
    case 'after':
      return place(reason.step) === 'before'
        ? ['It follows ', step(reason.step), ' and may not wait long.']
        : ['Later, and ', step(reason.step), ' would have to wait for it.']
    case 'kit':
      return place(reason.step) === 'before'
        ? [capital(kit(reason.kit)), ' is free once ', step(reason.step), ' is over.']
        : ['Later, and ', kit(reason.kit), ' is wanted for ', step(reason.step), '.']
    case 'cook':
      return place(reason.step) === 'before'
        ? [cook(reason.cook), ' is at ', step(reason.step), ' until then.']
        : ['Later, and ', cook(reason.cook), ' is wanted for ', step(reason.step), '.']
    case 'oven':
      return ['Later, and ', kit(reason.kit), ' would not have the heat that ', step(reason.step), ' wants.']
    case 'course':
      return [
        'Later, and ',
        { to: 'course', id: reason.course, words: names.courseName(reason.course) },
        ' would be late to the table.',
      ]
    case 'window':
      return ['Its own latest time is then.']
    case 'presence':
      return [cook(reason.cook), ' is not there later.']
    case 'now':
      return ['It is being done now.']
  }
}

const capital = (piece: Piece): Piece => (typeof piece === 'string' ? piece : { ...piece, words: sentence(piece.words) })

/** As `becauseParts`, in words alone. */
export const becauseText = (reason: Reason, names: Names, place: (step: string) => Place): string =>
  becauseParts(reason, names, place)
    .map((piece) => (typeof piece === 'string' ? piece : piece.words))
    .join('')

/** Tells `becauseText` where another step lies, from the cues of the same order. */
export const placeAgainst =
  (cue: Cue, cues: readonly Cue[]) =>
  (step: string): Place => {
    const other = cues.filter((candidate) => candidate.step === step && candidate !== cue)
    if (other.some((candidate) => Date.parse(candidate.start) >= Date.parse(cue.end))) return 'after'
    if (other.some((candidate) => Date.parse(candidate.end) <= Date.parse(cue.start))) return 'before'
    return 'beside'
  }
