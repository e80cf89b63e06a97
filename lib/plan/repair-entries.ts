import type { At } from '#lib/domain/atoms.ts'
import type { Cook, Use } from '#lib/domain/kitchen.ts'
import type { Course, Dish, Step } from '#lib/domain/menu.ts'
import { type EveningClock, epochMsOf } from '#lib/domain/time.ts'
import { circularArrows } from './cut-cycles.ts'
import { mapKept } from './tidy.ts'

type Ids = ReadonlySet<string>
type Report = (why: string) => void

/** Keeps the hours of a cook that lie in a kitchen and end after they begin; those in a removed one went with it. */
export const repairCook = (cook: Cook, clock: EveningClock, kitchens: Ids, removed: Ids, report: Report): Cook => {
  const presence = cook.presence.filter((one) => {
    const sound = kitchens.has(one.kitchen) && epochMsOf(clock, one.from) < epochMsOf(clock, one.to)
    if (!sound && !removed.has(one.kitchen))
      report(`Some hours of the cook "${cook.id}" are in no kitchen, or end before they begin: they are left out.`)
    return sound
  })
  const busy = cook.busy?.filter((one) => epochMsOf(clock, one.from) < epochMsOf(clock, one.to))
  if (busy?.length !== cook.busy?.length)
    report(`Something that keeps the cook "${cook.id}" ends before it begins: it is left out.`)
  if (presence.length === cook.presence.length && busy?.length === cook.busy?.length) return cook
  const { busy: _busy, ...rest } = cook
  return { ...rest, presence, ...(busy && busy.length > 0 ? { busy } : {}) }
}

const PARTS = [
  ['lead', 'leads'],
  ['hosts', 'stays at the table for'],
  ['pours', 'pours at'],
  ['clears', 'clears'],
] as const

/**
 * One welcome, the first, beside those of the children, who eat before `sitDown`; who leads, hosts, pours and clears is a cook.
 * `sitDown` and the clock are the evening's.
 */
export const repairCourses = (
  courses: Course[],
  cooks: Ids,
  removed: Ids,
  own: EveningClock & { readonly sitDown: At },
  report: Report,
): Course[] => {
  const welcome = courses.find((course) => course.welcome && !course.children)
  return mapKept(courses, (course) => {
    let kept = course
    if (course.children && (!course.welcome || epochMsOf(own, course.children.at) > epochMsOf(own, own.sitDown))) {
      report(`The children cannot eat the course "${course.id}" after everybody sits down.`)
      const { children: _children, ...rest } = kept
      kept = rest
    }
    if (course.welcome !== undefined && !kept.children && course !== welcome) {
      report(`Only one course can be the welcome: "${course.id}" is not.`)
      const { welcome: _welcome, ...rest } = kept
      kept = rest
    }
    for (const [part, does] of PARTS) {
      const cook = course[part]
      if (cook === undefined || cooks.has(cook)) continue
      if (!removed.has(cook)) report(`The cook who ${does} the course "${course.id}" is not there.`)
      const { [part]: _cook, ...rest } = kept
      kept = rest
    }
    return kept
  })
}

const repairUses = (uses: Use[], ovens: Ids, of: string, report: Report): Use[] =>
  mapKept(uses, (use) => {
    if (use.kind !== 'oven' || use.oven === undefined || ovens.has(use.oven)) return use
    report(`The oven "${use.oven}" of "${of}" is not there: any oven will do.`)
    const { oven: _oven, ...any } = use
    return any
  })

/**
 * A step's waits for steps that are there other than itself, its ovens, and its window; circles of waits are not looked at.
 * `familiar`: steps that are there or were removed, whose removal ends a wait without a word.
 */
export const repairStep = (step: Step, clock: EveningClock, steps: Ids, familiar: Ids, ovens: Ids, report: Report): Step => {
  const after = step.after.filter((one) => {
    const sound = steps.has(one.step) && one.step !== step.id
    if (!sound && (one.step === step.id || !familiar.has(one.step)))
      report(`The step "${step.id}" waits for "${one.step}", which is not there: it does not wait.`)
    return sound
  })
  const ways = mapKept(step.ways, (way) => {
    const uses = repairUses(way.uses, ovens, step.id, report)
    return uses === way.uses ? way : { ...way, uses }
  })
  const late = step.earliest && step.latest && epochMsOf(clock, step.earliest) >= epochMsOf(clock, step.latest)
  if (!late && ways === step.ways && after.length === step.after.length) return step
  if (!late) return { ...step, ways, after }
  report(`The step "${step.id}" would have to end before it may start: only its earliest start is kept.`)
  const { latest: _latest, ...rest } = step
  return { ...rest, ways, after }
}

interface Around {
  readonly host: string
  readonly kitchenIds: Ids
  /** Kitchens that somebody removed: their dishes are made beside the table, which needs no report. */
  readonly removedKitchens: Ids
  readonly ovens: Ids
  readonly stepIds: Ids
  /** Dishes that some step carries to the host's kitchen. */
  readonly carried: Ids
  /** Dishes and steps that are there or were removed: what hangs on a removed one ends without a word. */
  readonly familiar: Ids
}

/** Dishes in known kitchens, carried when made elsewhere, whose stand-ins and originals are there and not in a circle. */
export const repairDishes = (dishes: Dish[], around: Around, report: Report): Dish[] => {
  const ids: Ids = new Set(dishes.map((dish) => dish.id))
  const standIns = circularArrows(
    dishes.flatMap((dish) => (dish.standIn !== undefined && ids.has(dish.standIn) ? [{ from: dish.id, to: dish.standIn }] : [])),
  )
  const variants = circularArrows(
    dishes.flatMap((dish) => (dish.variant && ids.has(dish.variant.of) ? [{ from: dish.id, to: dish.variant.of }] : [])),
  )
  const circling = (arrows: Iterable<{ readonly from: string }>): Ids => new Set([...arrows].map((arrow) => arrow.from))
  const [roundStandIns, roundVariants] = [circling(standIns), circling(variants)]
  return mapKept(dishes, (dish) => {
    let next = dish
    if (dish.standIn !== undefined && (!ids.has(dish.standIn) || roundStandIns.has(dish.id))) {
      if (roundStandIns.has(dish.id) || !around.familiar.has(dish.standIn))
        report(`The stand-in of the dish "${dish.id}" is not there, or stands in for it in a circle.`)
      const { standIn: _standIn, ...rest } = next
      next = rest
    }
    const of = dish.variant
    if (of && (!ids.has(of.of) || !around.stepIds.has(of.fork) || roundVariants.has(dish.id))) {
      if (roundVariants.has(dish.id) || !around.familiar.has(of.of) || !around.familiar.has(of.fork))
        report(`What the dish "${dish.id}" is a variant of is not there, or is a variant of it in a circle.`)
      const { variant: _variant, ...rest } = next
      next = rest
    }
    const uses = repairUses(dish.keeps.uses, around.ovens, dish.id, report)
    if (uses !== dish.keeps.uses) next = { ...next, keeps: { ...next.keeps, uses } }
    if (!around.kitchenIds.has(dish.kitchen)) {
      if (!around.removedKitchens.has(dish.kitchen))
        report(`The kitchen of the dish "${dish.id}" is not there: it is made beside the table.`)
      next = { ...next, kitchen: around.host }
    } else if (dish.kitchen !== around.host && dish.state !== 'dropped' && !around.carried.has(dish.id)) {
      report(`No step carries the dish "${dish.id}" from its kitchen: it is taken as made beside the table.`)
      next = { ...next, kitchen: around.host }
    }
    return next
  })
}
