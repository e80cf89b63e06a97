import type { Filling, Plating } from '#lib/night/plating.ts'
import { countOf, listText, sentence } from './clock.ts'
import type { Names } from './names.ts'
import { guardHead } from './night-alarm.ts'

/** "Eight plates", "three platters", "already on the table". */
export const plateCount = ({ service, count }: Pick<Plating, 'service' | 'count'>): string => {
  switch (service) {
    case 'plated':
      return countOf(count, 'plate')
    case 'platters':
      return countOf(count, 'platter')
    case 'on-table':
      return countOf(count, 'dish', 'dishes')
  }
}

/** "Beetroot on 7", "Beetroot for 7": one dish, in the order in which they are filled. */
export const fillingText = ({ dish, portions, insteadOf }: Filling, service: Plating['service'], names: Names): string => {
  const made = `${names.dishName(dish)} ${service === 'plated' ? 'on' : 'for'} ${portions}`
  return insteadOf === null ? made : `${made}, instead of ${names.dishName(insteadOf)}`
}

/** What sets a dish's plates apart; null for all others. */
export const apartText = ({ guardedFor }: Filling): string | null =>
  guardedFor.length === 0 ? null : `${listText(guardedFor.map(guardHead))}: own board and spoon, covered until it goes.`

/** Who plates and who carries, as far as the plan says. */
export const handsText = ({ hands, carriers, guardCarriers }: Plating, names: Names): readonly string[] => {
  const who = (cooks: readonly string[]) => listText(cooks.map(names.cookName))
  const verb = (cooks: readonly string[], one: string, many: string) =>
    `${sentence(who(cooks))} ${cooks.length === 1 ? one : many}`
  return [
    hands.length > 0 ? `${verb(hands, 'plates', 'plate')}.` : 'Nobody is down for plating: agree on it now.',
    ...(guardCarriers.length > 0 ? [`${verb(guardCarriers, 'carries', 'carry')} the plate that is kept apart, on its own.`] : []),
    carriers.length > 0 ? `${verb(carriers, 'carries', 'carry')}.` : 'Who carries is not in the plan: agree on it now.',
  ]
}

/** What plating still waits for. */
export const waitsText = ({ waitsFor }: Pick<Plating, 'waitsFor'>, names: Names): string | null =>
  waitsFor.length === 0 ? null : `Not done yet: ${listText(waitsFor.map((step) => `“${names.stepName(step)}”`))}.`
