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
      const { first, next, seconds } = warning
      const [one, other] = [names.dishName(first.dish), names.dishName(next.dish)]
      const [from, to] = [heatOf(first), heatOf(next)]
      if (seconds === null)
        return {
          says: `${one} wants ${names.kitName(warning.oven)} at ${from}, ${other} at ${to}, close together going by their methods.`,
          todo: `Change when or how hot ${other} is baked`,
          where: { kind: 'dish', id: next.dish },
        }
      const gap = seconds < 0 ? 'at the same time' : seconds < 30 ? 'right after' : `${minutesText(seconds / 60)} after`
      return {
        says:
          seconds < 0
            ? `${sentence(names.kitName(warning.oven))} is wanted at ${from} for ${one} and at ${to} for ${other} ${gap}.`
            : `${sentence(names.kitName(warning.oven))} has to go from ${from} to ${to}: ${other} goes in ${gap} ${one}.`,
        todo: 'See the oven in the running order',
        where: { kind: 'order' },
      }
    }
    case 'same-main': {
      const those = warning.dishes.map(({ dish, by }) => `${names.dishName(dish)} (${ruleWords[by]})`)
      const last = warning.dishes[warning.dishes.length - 1]
      const times = warning.dishes.length === 2 ? 'twice' : `${countText(warning.dishes.length)} times`
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
