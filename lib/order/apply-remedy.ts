import { bringCold, type ColdWay } from '#lib/domain/bring-cold.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import type { Remedy } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { epochMsOf, wallTimeOfMs } from '#lib/domain/time.ts'

type Unpriced<T> = T extends unknown ? Omit<T, 'missed' | 'said'> : never

/** What a way out changes, before anybody knows its price. */
export type Change = Unpriced<Remedy>

/**
 * The evening with a way out taken: what an edit of the same meaning would make of it. What the remedy names and the
 * evening does not have is left alone. What is a matter of safety is never made longer.
 */
export const applyRemedy = (evening: Evening, change: Change): Evening => {
  switch (change.kind) {
    case 'use-way':
      return withStep(evening, change.step, (step) => {
        const way = step.ways[change.way]
        return way ? { ...step, ways: [way] } : step
      })
    case 'do-ahead':
      return withStep(evening, change.step, (step) => ({ ...step, earliest: change.earliest }))
    case 'other-oven':
      return withStep(evening, change.step, (step) => ({
        ...step,
        ways: step.ways.map((way) => withOvens(way, (use) => ({ ...use, oven: change.kit }))),
      }))
    case 'widen-temperature':
      return withStep(evening, change.step, (step) => ({
        ...step,
        ways: step.ways.map((way, index) =>
          index === change.way ? withOvens(way, (use) => ({ ...use, lowC: change.lowC, highC: change.highC })) : way,
        ),
      }))
    case 'wait-longer':
      return withStep(evening, change.step, (step) => ({
        ...step,
        after: step.after.map((after) =>
          after.step === change.after && after.most !== undefined && after.kind === 'quality'
            ? { ...after, most: longer(after.most, change.by) }
            : after,
        ),
      }))
    case 'give-to':
      return {
        ...evening,
        claims: [...evening.claims.filter(({ target }) => target !== change.step), { target: change.step, cook: change.cook }],
      }
    case 'keep-longer':
      return withDish(evening, change.dish, ({ carry, ...dish }) => ({
        ...dish,
        keeps: keptLonger(dish.keeps, change.by),
        ...(carry ? { carry: keptLonger(carry, change.by) } : {}),
      }))
    case 'bring-cold':
      return broughtCold(evening, change)
    case 'drop':
      return dropped(evening, change.dish)
    case 'course-later':
      return served(evening, change.course, change.by)
  }
}

const withStep = (evening: Evening, id: string, edit: (step: Step) => Step): Evening => ({
  ...evening,
  steps: evening.steps.map((step) => (step.id === id ? edit(step) : step)),
})

const withDish = (evening: Evening, id: string, edit: (dish: Dish) => Dish): Evening => ({
  ...evening,
  dishes: evening.dishes.map((dish) => (dish.id === id ? edit(dish) : dish)),
})

type OvenUse = Extract<Way['uses'][number], { kind: 'oven' }>

const withOvens = (way: Way, edit: (use: OvenUse) => OvenUse): Way => ({
  ...way,
  uses: way.uses.map((use) => (use.kind === 'oven' ? edit(use) : use)),
})

const longer = (most: string, by: string): string => durationOf(secondsOf(most) + secondsOf(by))

const keptLonger = <T extends { readonly most: string; readonly kind: 'quality' | 'safety' }>(keeps: T, by: string): T =>
  keeps.kind === 'quality' ? { ...keeps, most: longer(keeps.most, by) } : keeps

const broughtCold = (evening: Evening, way: ColdWay): Evening => {
  const cold = bringCold(evening, way)
  if (!cold) return evening
  const changed = new Map(cold.changed.map((one) => [one.id, one]))
  return {
    ...evening,
    dishes: evening.dishes.map((dish) => (dish.id === way.dish ? { ...dish, carry: cold.carry } : dish)),
    steps: [...evening.steps.map((step) => ({ ...step, ...changed.get(step.id) })), ...cold.added],
  }
}

/** Its stand-in, when it has one, takes its place. */
const dropped = (evening: Evening, id: string): Evening => {
  const standIn = evening.dishes.find((dish) => dish.id === id)?.standIn
  const gone = withDish(evening, id, (dish) => ({ ...dish, state: 'dropped' }))
  return standIn === undefined ? gone : withDish(gone, standIn, (dish) => ({ ...dish, state: 'on' }))
}

/** The first course: all sit down later. Any other: it is wanted so much later after the plates before it. */
const served = (evening: Evening, id: string, by: string): Evening => {
  const first = servedCourses(evening).find((course) => !course.welcome)
  if (first?.id === id) {
    const sitDown = wallTimeOfMs(evening, epochMsOf(evening, evening.sitDown) + secondsOf(by) * 1000)
    return { ...evening, sitDown }
  }
  return {
    ...evening,
    courses: evening.courses.map((course) => {
      if (course.id !== id) return course
      const { ideal, most } = course.wait
      return { ...course, wait: { ideal: [longer(ideal[0], by), longer(ideal[1], by)], most: longer(most, by) } }
    }),
  }
}
