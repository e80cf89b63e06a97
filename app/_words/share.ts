import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { CookShare, Exception, Part, PartReason } from '#lib/sharing/split.ts'
import { claimedText } from './claimed.ts'
import { countOf, listText, sentence } from './clock.ts'
import { durationText, minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { hoursText } from './presence.ts'

const roundly = (minutes: number): string => minutesText(Math.round(minutes))

/** "2 h 10 hands on, up from the table 17 min." of one cook, as the running order has it. */
export const cookStandText = (cook: RunningOrder['cooks'][number], eats: boolean): string => {
  const hands = `${durationText(cook.handsOn)} hands on`
  if (!eats) return `${hands}; does not eat at the table.`
  return `${hands}, ${cook.missed === 'PT0S' ? 'never up from the table' : `up from the table ${durationText(cook.missed)}`}.`
}

/** "Has the soup and two steps, and helps with one step." */
export const cookHasText = (evening: Evening, cook: string): string => {
  const theirs = claimedText(evening, cook)
  const helped = evening.claims.filter(({ also }) => also?.includes(cook)).length
  const helps = helped > 0 ? `helps with ${countOf(helped, 'thing')}` : ''
  if (!theirs) return helps ? `${sentence(helps)}.` : 'Has taken nothing on yet.'
  return `Has ${theirs}${helps ? `, and ${helps}` : ''}.`
}

/** "Here Friday 09:00 to 22:00." and where from, when it is another kitchen. */
export const whereText = (evening: Evening, cook: string, names: Names): string => {
  const stays = evening.cooks.find(({ id }) => id === cook)?.presence ?? []
  if (stays.length === 0) return 'No hours yet, so nothing can be given to them.'
  const kitchens = [...new Set(stays.map(({ kitchen }) => kitchen))]
  return `${kitchens
    .map((kitchen) => {
      const hours = stays.filter((stay) => stay.kitchen === kitchen).map((stay) => hoursText(evening.date, stay))
      return `${kitchen === evening.host ? 'Here' : `In ${names.kitchenName(kitchen)}`} ${listText(hours)}`
    })
    .join('; ')}.`
}

/** What a part of a suggestion is about: "Parsnip soup", "all of Main", "Lay the table and two other things". */
export const partName = (of: Part['of'], names: Names): string => {
  switch (of.kind) {
    case 'course':
      return `all of ${names.courseName(of.course)}`
    case 'dish':
      return names.dishName(of.dish)
    case 'chores': {
      const [first, second, ...more] = of.steps.map((step) => `“${names.stepName(step)}”`)
      return listText([first ?? '', ...(more.length > 0 ? [countOf(more.length + 1, 'other thing')] : second ? [second] : [])])
    }
  }
}

/** "31 min hands on and 18 min with an eye on it". */
export const effortText = ({ minutes, watched }: Pick<Part, 'minutes' | 'watched'>): string => {
  const hands = minutes > 0 || watched === 0 ? [`${roundly(minutes)} hands on`] : []
  const eye = watched > 0 ? [`${roundly(watched)} with an eye on it`] : []
  return listText([...hands, ...eye])
}

/** Why a step of a part goes to somebody else. */
export const exceptionText = ({ step, cook, because }: Exception, names: Names): string => {
  const does = `${names.cookName(cook)} does “${names.stepName(step)}”`
  switch (because.kind) {
    case 'not-there':
      return `${does}: ${names.cookName(because.cook)} is not there then`
    case 'busy':
      return `${does}: ${names.cookName(because.cook)} is at “${names.stepName(because.step)}” then`
    case 'evener':
      return `${does}: that is fairer`
  }
}

/** Why a part goes to its cook, without the stop. */
export const partReasonText = (reason: PartReason, cook: string, names: Names): string => {
  const name = names.cookName(cook)
  switch (reason.kind) {
    case 'only-one-there':
      return `nobody else is there for all of it`
    case 'has-the-rest':
      return `${name} has the rest of it`
    case 'leads':
      return `${name} leads ${names.courseName(reason.course)}`
    case 'planned-so':
      return reason.steps === reason.of
        ? `the running order gives it to ${name} anyway`
        : `the running order gives ${name} ${reason.steps} of its ${reason.of} steps anyway`
    case 'has-least':
      return `${name} has least to do without it`
  }
}

/** "Piet: 2 h 16 hands on, up from the table 19 min." with everything taken; an even share is said beside it. */
export const shareText = (share: CookShare, names: Names): string => {
  const effort = effortText(share)
  const missed =
    share.missed === null ? '' : share.missed < 0.5 ? ', never up from the table' : `, up ${roundly(share.missed)} from the table`
  return `${names.cookName(share.cook)} ${effort}${missed}`
}

/** What an even share is, in half minutes of watching: why it is not the same for all. */
export const evenText = (shares: readonly CookShare[], names: Names): string =>
  `Even would be ${listText(shares.map(({ cook, even }) => `${roundly(even)} for ${names.cookName(cook)}`))}, by who is there when there is work; a minute of keeping an eye counts half.`

/** What became of several claims asked for together. */
export const givenText = (done: number, refused: readonly string[]): string =>
  refused.length === 0
    ? `${sentence(countOf(done, 'claim'))} made.`
    : `${sentence(countOf(done, 'claim'))} made. ${refused.join(' ')}`
