import type { Cue, Reason } from '#lib/domain/running-order.ts'
import { sentence } from './clock.ts'
import type { Names } from './names.ts'

/** When the other cue named by a reason runs, against the one that is explained. */
type Place = 'before' | 'after' | 'beside'

/** Why a cue is not later, or not earlier, in one sentence. */
export const becauseText = (reason: Reason, names: Names, place: (step: string) => Place): string => {
  switch (reason.kind) {
    case 'after':
      return place(reason.step) === 'before'
        ? `It follows “${names.stepName(reason.step)}” and may not wait long.`
        : `Later, and “${names.stepName(reason.step)}” would have to wait for it.`
    case 'kit':
      return place(reason.step) === 'before'
        ? `${sentence(names.kitName(reason.kit))} is free once “${names.stepName(reason.step)}” is over.`
        : `Later, and ${names.kitName(reason.kit)} is wanted for “${names.stepName(reason.step)}”.`
    case 'cook':
      return place(reason.step) === 'before'
        ? `${names.cookName(reason.cook)} is at “${names.stepName(reason.step)}” until then.`
        : `Later, and ${names.cookName(reason.cook)} is wanted for “${names.stepName(reason.step)}”.`
    case 'oven':
      return `Later, and ${names.kitName(reason.kit)} would not have the heat that “${names.stepName(reason.step)}” wants.`
    case 'course':
      return `Later, and ${names.courseName(reason.course)} would be late to the table.`
    case 'window':
      return 'Its own latest time is then.'
    case 'presence':
      return `${names.cookName(reason.cook)} is not there later.`
    case 'now':
      return 'It is being done now.'
  }
}

/** Tells `becauseText` where another step lies, from the cues of the same order. */
export const placeAgainst =
  (cue: Cue, cues: readonly Cue[]) =>
  (step: string): Place => {
    const other = cues.filter((candidate) => candidate.step === step && candidate !== cue)
    if (other.some((candidate) => Date.parse(candidate.start) >= Date.parse(cue.end))) return 'after'
    if (other.some((candidate) => Date.parse(candidate.end) <= Date.parse(cue.start))) return 'before'
    return 'beside'
  }
