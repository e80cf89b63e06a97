import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Remedy } from '#lib/domain/running-order.ts'
import { cookName, lengthInWords } from './order-words.ts'

const DAYS: Readonly<Record<string, string>> = { '-1': 'the day before', '0': 'the day itself', '1': 'the day after' }

/** A way out as what to do, with what it costs at the table and what the guests would notice. */
export const remedyInWords = (evening: Evening, remedy: Remedy): string =>
  `${doing(evening, remedy)}${secondsOf(remedy.missed) > 0 ? `, for ${lengthInWords(remedy.missed)} more away from the table` : ''}. ${remedy.said}`

const doing = (evening: Evening, remedy: Remedy): string => {
  const step = (id: string) => `“${evening.steps.find((one) => one.id === id)?.does ?? id}”`
  const dish = (id: string) => `“${evening.dishes.find((one) => one.id === id)?.name ?? id}”`
  switch (remedy.kind) {
    case 'use-way':
      return `do ${step(remedy.step)} the ${['first', 'second', 'third'][remedy.way] ?? 'other'} way`
    case 'do-ahead': {
      const { day, time } = remedy.earliest
      return `do ${step(remedy.step)} from ${time} ${DAYS[day] ?? `${-day} days before`}`
    }
    case 'other-oven': {
      const kit = evening.kitchens.flatMap((kitchen) => kitchen.kit).find(({ id }) => id === remedy.kit)
      return `use ${kit?.kind === 'oven' ? kit.name : remedy.kit} for ${step(remedy.step)}`
    }
    case 'course-later':
      return `serve “${evening.courses.find(({ id }) => id === remedy.course)?.name ?? remedy.course}” ${lengthInWords(remedy.by)} later`
    case 'give-to':
      return `give ${step(remedy.step)} to ${cookName(evening, remedy.cook)}`
    case 'widen-temperature':
      return `let ${step(remedy.step)} be at ${remedy.lowC}–${remedy.highC}°`
    case 'keep-longer':
      return `let ${dish(remedy.dish)} wait ${lengthInWords(remedy.by)} longer`
    case 'wait-longer':
      return `let ${step(remedy.step)} wait ${lengthInWords(remedy.by)} longer after ${step(remedy.after)}`
    case 'bring-cold':
      return `bring ${dish(remedy.dish)} cold and heat it beside the table`
    case 'drop':
      return `leave ${dish(remedy.dish)} out`
  }
}
