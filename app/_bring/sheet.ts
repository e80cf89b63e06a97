import type { Evening } from '#lib/domain/evening.ts'
import { stateOf } from '#lib/domain/offer.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type HomeSheet, homeSheetOf } from '#lib/potluck/home-sheet.ts'
import { toConfirm } from '#lib/table/to-confirm.ts'

/** The sheet of a home; whatever its cook has not confirmed yet is asked for, whoever may need it: that is for the hosts to know. */
export const sheetOf = (evening: Evening, order: RunningOrder | null, kitchen: string): HomeSheet =>
  homeSheetOf(evening, order, {
    kitchen,
    toConfirm: toConfirm(evening),
  })

/** The steps that carry what is made in a home. */
export const carriesFrom = (evening: Evening, kitchen: string): readonly string[] => {
  const dishes = new Set(evening.dishes.flatMap((dish) => (dish.kitchen === kitchen && dish.state === 'on' ? [dish.id] : [])))
  return evening.steps.flatMap(({ id, role, dish }) => (role === 'carry' && dish !== null && dishes.has(dish) ? [id] : []))
}

/** Who comes from there with something: by the order, or by what they offered. */
export const carriersFrom = (evening: Evening, order: RunningOrder | null, kitchen: string): readonly string[] => {
  const carries = new Set(carriesFrom(evening, kitchen))
  const planned = (order?.cues ?? []).flatMap(({ step, cooks }) => (carries.has(step) ? cooks : []))
  const offered = (evening.offers ?? []).flatMap((offer) =>
    offer.kitchen === kitchen && stateOf(offer) === 'accepted' ? [offer.cook] : [],
  )
  return [...new Set([...planned, ...offered])]
}

/** What was told of the steps that carry from a home: on the way since, there since. */
export const wayTold = (
  evening: Evening,
  carries: readonly string[],
): { readonly left: string | null; readonly there: string | null } => {
  const facts = evening.night.flatMap((fact) => ('step' in fact && carries.includes(fact.step) ? [fact] : []))
  const done = facts.flatMap((fact) => fact.done ?? [])
  return {
    left: facts.flatMap((fact) => fact.started ?? []).toSorted()[0] ?? null,
    there: carries.length > 0 && done.length === carries.length ? (done.toSorted().at(-1) ?? null) : null,
  }
}
