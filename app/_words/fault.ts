import type { EditFault } from '#lib/plan/commands/fault.ts'
import { refusedText } from './refused.ts'

/** Why an edit was not made. */
export const faultText = (fault: EditFault): string => {
  switch (fault.kind) {
    case 'unknown-entry':
      return 'This was removed meanwhile.'
    case 'id-taken':
      return 'That could not be added. Try once more.'
    case 'refused':
      return fault.refusals.map(refusedText).join(' ')
  }
}
