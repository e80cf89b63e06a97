import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { wallTimeOfMs } from '#lib/domain/time.ts'
import type { Change } from './apply-remedy.ts'
import type { Outcome } from './replan.ts'

/**
 * What the guests would notice of a way out, in a sentence. It is part of the running order's data, so it is the same on every
 * screen, and names nothing, for a name may change without another order.
 */
export const saidOf = (evening: Evening, change: Change, { starts }: Pick<Outcome, 'starts'>): string => {
  switch (change.kind) {
    case 'use-way':
    case 'do-ahead':
    case 'other-oven':
    case 'give-to':
      return 'Nobody notices.'
    case 'widen-temperature':
      return isHotter(evening, change) ? 'It may come out a little darker.' : 'It may come out a little paler.'
    case 'bring-cold': {
      const at = starts.get(change.heat)
      const when = at === undefined ? 'there' : `from ${wallTimeOfMs(evening, at).time}`
      return `It is not fresh from the heat but heated again ${when}, to 74 °C throughout.`
    }
    case 'keep-longer':
      return `It may be past its best: it stands ${minutes(change.by)} longer than you would like.`
    case 'wait-longer':
      return `It may be past its best: it stands ${minutes(change.by)} longer than you would like in between.`
    case 'course-later':
      return `Everybody waits ${minutes(change.by)} longer for it.`
    case 'drop':
      return evening.dishes.find(({ id }) => id === change.dish)?.standIn === undefined
        ? 'It would be missing from the table.'
        : 'Its stand-in would come to the table.'
  }
}

const minutes = (by: string): string => `${Math.ceil(minutesOf(by))} min`

const isHotter = (evening: Evening, change: Extract<Change, { kind: 'widen-temperature' }>): boolean =>
  evening.steps
    .find(({ id }) => id === change.step)
    ?.ways[change.way]?.uses.some((use) => use.kind === 'oven' && change.highC > use.highC) ?? false
