import { COOLING, INTO_FRIDGE, KEPT, OUT_AFTER, OUT_BEFORE, REHEAT_C } from '#lib/domain/bring-cold.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { serves } from '#lib/domain/kit-wants.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { After, Dish, Step, Way } from '#lib/domain/menu.ts'
import type { AtHost, Offer } from '#lib/domain/offer.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { wayFrom } from '#lib/domain/way-from.ts'
import { CARRY_LIMIT, GENTLE_OVEN, GIVE_BACK, KEEPS, USUAL_FINISH, usualHeat, usualPlate } from './usual.ts'
import { formOf, type Variant } from './variant.ts'
import { isFromElsewhere } from './way.ts'

/** What the steps of an accepted dish say; words are the caller's. */
export interface Says {
  readonly make: string
  /** At home: cooled and chilled, or kept cold. */
  readonly chill: string
  readonly carry: string
  /** Into the host's fridge. */
  readonly fridge: string
  readonly heat: string
  /** How one sees that it is hot. */
  readonly hot: string
  readonly finish: string
  readonly plate: string
  readonly giveBack: string
  readonly notes: string
}

type Unplaced<T> = Omit<T, 'order'>

/** What an accepted offer of food becomes: a dish, its steps in order, and a chore where its vessel goes home. */
export interface Become {
  readonly brought: {
    readonly dish: Unplaced<Dish>
    readonly steps: readonly Unplaced<Step>[]
    readonly ingredients: readonly []
  }
  readonly chore: Unplaced<Step> | null
  /** What of the offer is otherwise in this form. */
  readonly form: Pick<Offer, 'arrives' | 'how'> & {
    readonly box: Offer['box'] | undefined
    readonly atHost: Offer['atHost'] | undefined
  }
  /** Steps that nobody but its cook can do: theirs to claim. */
  readonly own: readonly string[]
}

const WORKTOP: Use = { kind: 'worktop', places: 1 }
/** Put away when it arrives; common practice, no source. */
const AT_ONCE = 'PT10M'
/** Vessels are washed within the hour after the meal; common practice, no source. */
const HOUR_SECONDS = 3600
/** Still hot, as it goes on from the heat; common practice, no source. */
const WHILE_HOT = 'PT15M'

const hands = (takes: Way['takes'], uses: readonly Use[] = []): Way => ({
  care: 'hands-on',
  cooks: 1,
  takes,
  touches: [],
  uses: [...uses],
})
const left = (takes: Way['takes'], upTo: string | undefined, uses: readonly Use[], outBy: string): Way => ({
  care: 'leave',
  cooks: 1,
  takes,
  ...(upTo === undefined ? {} : { upTo }),
  touches: [
    { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
    { when: 'out', takes: 'PT1M', lateBy: outBy },
  ],
  uses: [...uses],
})

const FIVE = { least: 'PT5M', likely: 'PT5M', most: 'PT5M' }

/** How it is heated: in the oven, or on the hob under somebody's eye, or either; in the oven where nothing was said. */
const heatWays = (offer: Offer, atHost: AtHost): readonly Way[] => {
  const takes = atHost.heat ?? usualHeat(offer.portions)
  const oven: Way = left(
    takes,
    undefined,
    [
      {
        kind: 'oven',
        shelves: atHost.shelves ?? 1,
        lowC: Math.min(atHost.lowC ?? GENTLE_OVEN.lowC, atHost.highC ?? GENTLE_OVEN.highC),
        highC: Math.max(atHost.highC ?? GENTLE_OVEN.highC, atHost.lowC ?? GENTLE_OVEN.lowC),
        preheated: true,
      },
    ],
    'PT2M',
  )
  if (atHost.ring === undefined) return [oven]
  const ring: Way = { ...hands(takes, [{ kind: 'ring', size: atHost.ring }]), care: 'eye' }
  return atHost.shelves === undefined ? [ring] : [oven, ring]
}

/**
 * The dish and steps of an accepted offer in one of its forms, for a course. Engine and screens see nothing but these: work at home, the
 * way, the host's fridge, heat, hands and plates, and the vessel given back. Null for a thing, and where no course is meant.
 */
export const become = (
  evening: Evening,
  offer: Offer,
  variant: Variant,
  { newId, says }: { readonly newId: () => string; readonly says: Says },
): Become | null => {
  const course = evening.courses.find(({ id }) => id === offer.course)
  if (offer.kind === 'thing' || !course) return null
  const form = formOf(offer, variant)
  const atHost = form.atHost ?? {}
  const carried = isFromElsewhere(evening, form)
  const id = newId()
  const steps: Unplaced<Step>[] = []
  const follows = (limit: Partial<After> = {}): After[] => {
    const before = steps.at(-1)
    return before ? [{ step: before.id, from: 'end', least: 'PT0S', kind: 'quality', ...limit }] : []
  }
  const add = (role: Step['role'], does: string, ways: readonly Way[], after: After[], more: Partial<Step> = {}) =>
    steps.push({ id: newId(), dish: id, does, role, where: 'kitchen', ways: [...ways], after, ...more })
  const within = (most: string): Partial<After> => ({ most, kind: 'safety' })

  const isHot = form.how === 'hot' || form.how === 'warm'
  const isCold = form.how === 'cold' || form.how === 'frozen'
  const chilling = ((): Use | null => {
    const use: Use = { kind: 'cold', keep: form.how === 'frozen' ? 'frozen' : 'cold', places: atHost.cold ?? 1 }
    const home = evening.kitchens.find(({ id: kitchen }) => kitchen === form.kitchen)
    return carried && isCold && home?.kit.some((kit) => serves(kit, { ...use, places: 1 })) ? { ...use, places: 1 } : null
  })()

  if (form.home) add('make', says.make, [hands(form.home, carried ? [] : [WORKTOP])], [])
  if (chilling) {
    const cooled = variant.kind === 'cold'
    const way = left(cooled ? COOLING : FIVE, KEPT, [chilling], 'PT0S')
    add('make', says.chill, [way], follows(within(INTO_FRIDGE)))
  }
  if (carried) {
    const soon = chilling ? within(OUT_BEFORE) : isHot ? { most: WHILE_HOT } : {}
    add('carry', says.carry, [hands(wayFrom(evening, form.kitchen))], follows(soon), { where: 'outside' })
  }
  const places = atHost.cold ?? (carried && isCold ? 1 : 0)
  if (places > 0) {
    const keep = form.how === 'frozen' ? 'frozen' : 'cold'
    add(
      'finish',
      says.fridge,
      [left(FIVE, KEPT, [{ kind: 'cold', keep, places }], 'PT0S')],
      follows(carried ? { most: AT_ONCE } : {}),
    )
  }
  const soon = (): Partial<After> => (places > 0 && steps.length > 0 ? within(OUT_AFTER) : {})
  const isHeated = form.arrives === 'to-heat' || atHost.shelves !== undefined || atHost.ring !== undefined
  const tools: readonly Use[] = (atHost.tools ?? []).map((tool): Use => ({ kind: 'tool', tool, count: 1 }))
  const isFinished = form.arrives === 'to-finish' || form.arrives === 'to-assemble' || atHost.finish !== undefined
  if (isHeated)
    add('finish', says.heat, heatWays(form, atHost), follows(soon()), {
      until: { ...(form.arrives === 'to-heat' ? { coreC: REHEAT_C } : {}), sign: says.hot },
    })
  const servedHot = isHeated || isHot
  const goesOn = (): Partial<After> => (isHeated ? { most: WHILE_HOT } : soon())
  if (isFinished) add('finish', says.finish, [hands(atHost.finish ?? USUAL_FINISH, [WORKTOP, ...tools])], follows(goesOn()))
  add(
    'plate',
    says.plate,
    [hands(usualPlate(course.service), [WORKTOP, ...(isFinished ? [] : tools)])],
    follows(isFinished ? (servedHot ? { most: WHILE_HOT } : {}) : goesOn()),
  )

  const limit = CARRY_LIMIT[form.how]
  const keeps = servedHot ? 'hot' : form.how
  const plate = steps.at(-1)
  return {
    brought: {
      dish: {
        id,
        course: course.id,
        name: form.name,
        kitchen: carried && form.kitchen !== undefined ? form.kitchen : evening.host,
        yields: form.portions,
        portions: form.portions,
        state: 'on',
        toTable: { early: 'PT0S', late: 'PT0S' },
        keeps: { how: keeps, most: KEEPS[keeps], kind: 'quality', uses: [] },
        ...(carried ? { carry: { how: form.how, most: form.box?.most ?? limit.most, kind: limit.kind } } : {}),
        notes: says.notes,
      },
      steps,
      ingredients: [],
    },
    chore:
      form.vessel?.goesHome && plate
        ? {
            id: newId(),
            dish: null,
            does: says.giveBack,
            role: 'chore',
            where: 'kitchen',
            ways: [hands(GIVE_BACK)],
            after: [{ step: plate.id, from: 'end', ...afterTheMeal(evening, course), kind: 'quality' }],
          }
        : null,
    form: { arrives: form.arrives, how: form.how, box: form.box, atHost: form.atHost },
    own: carried ? steps.filter(({ role }) => role === 'make' || role === 'carry').map(({ id: step }) => step) : [],
  }
}

/** From when a dish of the course leaves its vessel until the plates of the last course are off, as planned now, and an hour after that. */
const afterTheMeal = (evening: Evening, course: Evening['courses'][number]): Pick<After, 'least' | 'most'> => {
  const served = servedCourses(evening)
  const rest = served.slice(
    Math.max(
      0,
      served.findIndex(({ id }) => id === course.id),
    ),
  )
  const seconds = rest.reduce(
    (sum, { eating, clearing, wait }, at) =>
      sum + secondsOf(eating.likely) + secondsOf(clearing) + (at === 0 ? 0 : secondsOf(wait.ideal[0])),
    0,
  )
  return { least: durationOf(seconds), most: durationOf(seconds + HOUR_SECONDS) }
}
