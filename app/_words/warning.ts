import type { MainFood } from '#lib/table/main-foods.ts'
import type { Heat, MainRule, Warning } from '#lib/table/warning.ts'
import { countText, listText, sentence } from './clock.ts'
import { minutesText } from './duration.ts'
import { heatText } from './heat.ts'
import type { Names } from './names.ts'
import { needsText } from './need.ts'

/** Where something can be done about a warning. */
export type WhereTo = { readonly kind: 'dish'; readonly id: string } | { readonly kind: 'order' } | { readonly kind: 'add-dish' }

export interface WarningWords {
  readonly says: string
  /** What to do about it, as a link's words. */
  readonly todo: string
  readonly where: WhereTo
}

const ruleWords: Readonly<Record<MainRule, string>> = {
  only: 'the one such thing in it',
  weight: 'most of its weight',
  first: 'its first line and its name',
  name: 'by its name',
}

/** The kinds of food are their own names. */
const foodText = (food: MainFood): string => food

const heatOf = ({ lowC, highC }: Heat): string => heatText(lowC, highC)

type OvenWarning = Extract<Warning, { kind: 'oven-heat' }>

/** "Lamb wants the oven at 150 to 160°, potatoes at 210 to 220°": each dish's heat once. */
const wantsText = ({ oven, changes }: OvenWarning, names: Names): string => {
  const heats = changes.flatMap(({ first, next }) => [first, next])
  const each = heats.filter(({ step }, at) => heats.findIndex((other) => other.step === step) === at)
  return each
    .map((heat, at) => `${names.dishName(heat.dish)} ${at === 0 ? `wants ${names.kitName(oven)} ` : ''}at ${heatOf(heat)}`)
    .join(', ')
}

/** "right after leeks", "eight minutes after leeks", "while leeks is still in it". */
const gapText = (seconds: number, dish: string): string =>
  seconds < 0 ? `while ${dish} is still in it` : `${seconds < 30 ? 'right after' : `${minutesText(seconds / 60)} after`} ${dish}`

const timesText = (count: number): string => (count === 2 ? 'twice' : `${countText(count)} times`)

/** What an oven has to do for a course, in one sentence. */
const changesText = ({ oven, changes }: OvenWarning, names: Names): string => {
  const name = sentence(names.kitName(oven))
  const each = changes.map(
    ({ first, next, seconds }) =>
      `to ${heatOf(next)} for ${names.dishName(next.dish)}, ${gapText(seconds, names.dishName(first.dish))}`,
  )
  const [one] = changes
  if (one && changes.length === 1) return `${name} has to go from ${heatOf(one.first)} ${each.join('')}.`
  return `${name} has to change its heat ${timesText(changes.length)}: ${each.join('; ')}.`
}

/** A warning in one or two sentences, and what to do about it. */
export const warningWords = (warning: Warning, names: Names): WarningWords => {
  switch (warning.kind) {
    case 'last-minute': {
      const [longest] = warning.dishes
      const minutes = Math.round(warning.minutes)
      return {
        says: `${minutes} last-minute minutes in one course: more than ten keep its cooks from the table.`,
        todo: longest ? `See what of ${names.dishName(longest.dish)} can be done ahead` : 'See the running order',
        where: longest ? { kind: 'dish', id: longest.dish } : { kind: 'order' },
      }
    }
    case 'oven-heat': {
      const last = warning.changes[warning.changes.length - 1]
      if (warning.inTime === null)
        return {
          says: `${wantsText(warning, names)}, close together going by their methods.`,
          todo: last ? `Change when or how hot ${names.dishName(last.next.dish)} is baked` : 'See the running order',
          where: last ? { kind: 'dish', id: last.next.dish } : { kind: 'order' },
        }
      return {
        says: `${changesText(warning, names)}${warning.inTime ? ' The running order leaves time for that.' : ''}`,
        todo: 'See the oven in the running order',
        where: { kind: 'order' },
      }
    }
    case 'same-main': {
      const those = warning.dishes.map(({ dish, by }) => `${names.dishName(dish)} (${ruleWords[by]})`)
      const last = warning.dishes[warning.dishes.length - 1]
      const times = timesText(warning.dishes.length)
      return {
        says: `Mainly ${foodText(warning.food)} ${times}: ${listText(those)}.`,
        todo: last ? `Look at ${names.dishName(last.dish)}` : 'See the running order',
        where: last ? { kind: 'dish', id: last.dish } : { kind: 'order' },
      }
    }
    case 'nothing-for': {
      const [open] = warning.open
      const who = needsText(warning.needs)
      if (open === undefined)
        return { says: `Nothing here for ${who}.`, todo: 'Add a dish for them', where: { kind: 'add-dish' } }
      return {
        says: `Nothing here is confirmed for ${who}: ingredients are missing or not checked.`,
        todo: `Check the ingredients of ${names.dishName(open)}`,
        where: { kind: 'dish', id: open },
      }
    }
  }
}
