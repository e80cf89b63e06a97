import { secondsOf } from './duration.ts'
import type { Evening } from './evening.ts'
import { serves } from './kit-wants.ts'
import type { Kit, Use } from './kitchen.ts'
import type { After, Dish, Step, Way } from './menu.ts'

/** A dish that would be carried cold, with the ids of the steps that it gets for that; `heat` may be one that it has. */
export interface ColdWay {
  readonly dish: string
  readonly chill: string
  readonly fridge: string
  readonly heat: string
}

/** What such a dish becomes: a limit on the road, steps that are new, and waits of others that change. */
export interface Cold {
  readonly carry: NonNullable<Dish['carry']>
  readonly added: readonly Step[]
  readonly changed: readonly Pick<Step, 'id' | 'after' | 'until'>[]
}

type Around = Pick<Evening, 'host' | 'kitchens' | 'dishes' | 'steps'>

/** Hot throughout again: USDA FSIS, "Leftovers and Food Safety", 165 °F; the strictest of the rules. */
export const REHEAT_C = 74
/** Into the fridge after cooking: FSA's hour for rice, the shortest of the rules. */
export const INTO_FRIDGE = 'PT1H'
/** In shallow boxes, well within the six hours of FDA Food Code 3-501.14(A); how long within: by Newton's law, no source. */
export const COOLING = { least: 'PT2H', likely: 'PT3H', most: 'PT4H' } as const
/** In the fridge at home: FSA's day for cooked rice, the shortest of the rules. */
export const KEPT = 'PT24H'
/** Out of one fridge and into the other: together the two hours of USDA FSIS, "Danger Zone". */
export const OUT_BEFORE = 'PT30M'
export const ON_THE_ROAD = 'PT1H30M'
export const OUT_AFTER = 'PT30M'
const FRIDGE: Use = { kind: 'cold', keep: 'cold', places: 1 }

const touch = (when: 'in' | 'out', takes: string, lateBy = 'PT0S') => ({ when, takes, lateBy }) as const

/** How long a dish for some eight takes to be hot again from the fridge: common practice, no source. */
const HEATED: readonly Way[] = [
  {
    care: 'leave',
    cooks: 1,
    takes: { least: 'PT25M', likely: 'PT30M', most: 'PT40M' },
    touches: [touch('in', 'PT1M'), touch('out', 'PT1M', 'PT2M')],
    uses: [{ kind: 'oven', shelves: 1, lowC: 160, highC: 190, preheated: true }],
  },
  {
    care: 'eye',
    cooks: 1,
    takes: { least: 'PT10M', likely: 'PT15M', most: 'PT20M' },
    touches: [],
    uses: [{ kind: 'ring', size: 'medium' }],
  },
]

/** Whether a way makes food hot. */
const heats = (way: Way): boolean => way.uses.some((use) => use.kind === 'ring' || (use.kind === 'oven' && use.lowC >= REHEAT_C))

/** The steps with which a dish is carried from its kitchen, and the first of them. */
const carriesOf = (around: Around, dish: string): readonly Step[] =>
  around.steps.filter((step) => step.dish === dish && step.role === 'carry')

/** The ids under which the dish could be carried cold: of a hot dish of another kitchen; null where it cannot, or is so already. */
export const coldWayOf = (around: Around, dish: string): ColdWay | null => {
  const found = around.dishes.find(({ id }) => id === dish)
  const [carry] = carriesOf(around, dish)
  if (!found || !carry || !found.carry || found.kitchen === around.host) return null
  if (found.carry.how !== 'hot' && found.carry.how !== 'warm') return null
  const taken = new Set(around.steps.map(({ id }) => id))
  const fresh = (what: string): string => {
    const base = `${carry.id.slice(0, 28)}-${what}`
    let id = base
    for (let n = 2; taken.has(id); n++) id = `${base}-${n}`
    return id
  }
  const heat = heatingOf(around, dish, carry.id)?.id ?? fresh('heat')
  const way: ColdWay = { dish, chill: fresh('chill'), fridge: fresh('fridge'), heat }
  return bringCold(around, way) === null ? null : way
}

/** A step that heats it after the way already, at the host's. */
const heatingOf = (around: Around, dish: string, carry: string): Step | undefined =>
  around.steps.find(
    (step) =>
      step.dish === dish && step.role === 'finish' && step.after.some((after) => after.step === carry) && step.ways.every(heats),
  )

/**
 * A dish of another kitchen that is chilled there, carried cold, put in the host's fridge and heated there to 74 °C, each within its
 * safe time: what the planner tries and what an edit writes. The steps have no words. Null where something that it needs is missing.
 */
export const bringCold = (around: Around, { dish: id, chill, fridge, heat }: ColdWay): Cold | null => {
  const dish = around.dishes.find((each) => each.id === id)
  const own = around.steps.filter((step) => step.dish === id)
  const [carry, second] = carriesOf(around, id)
  if (!dish || !carry || second || !dish.carry || dish.kitchen === around.host) return null
  const there = own.find((step) => step.id === heat)
  const ways = HEATED.filter((way) => hasAll(around, around.host, way.uses))
  if (!hasAll(around, dish.kitchen, [FRIDGE]) || !hasAll(around, around.host, [FRIDGE]) || (!there && ways.length === 0))
    return null
  const isMade = (after: After) => own.some((step) => step.id === after.step && step.role === 'make')
  const made = carry.after.filter(isMade)
  if (made.length === 0 || made.some(({ least }) => secondsOf(least) > secondsOf(INTO_FRIDGE))) return null
  const chilled = stepOf(carry, chill, keyBefore(own, carry), 'make', {
    ...LEFT,
    takes: COOLING,
    upTo: KEPT,
    touches: [touch('in', 'PT2M')],
  })
  const kept = stepOf(carry, fridge, `${carry.order}V`, 'finish', {
    ...LEFT,
    takes: { least: 'PT1M', likely: 'PT1M', most: 'PT1M' },
    upTo: KEPT,
    touches: [touch('in', 'PT1M')],
  })
  const heated: Step = { ...stepOf(carry, heat, `${carry.order}k`, 'finish'), ways: [...ways], until: { coreC: REHEAT_C } }
  const added: Step[] = [
    { ...chilled, after: made.map(({ step, least }) => ({ step, from: 'end', least, most: INTO_FRIDGE, kind: 'safety' })) },
    { ...kept, after: [wait(carry.id)] },
    ...(there ? [] : [{ ...heated, after: [wait(fridge, OUT_AFTER)] }]),
  ]
  if (added.some(({ order }) => order.length > MOST_KEY)) return null
  return {
    carry: { how: 'cold', most: ON_THE_ROAD, kind: 'safety' },
    added,
    changed: [
      { id: carry.id, after: [...carry.after.filter((after) => !isMade(after)), wait(chill, OUT_BEFORE)] },
      ...own.flatMap((step) => changedOf(step, carry.id, there, { fridge, heat })),
    ],
  }
}

const MOST_KEY = 64
const LEFT = { care: 'leave' as const, cooks: 1, uses: [FRIDGE] }

const wait = (step: string, most?: string): After =>
  most === undefined
    ? { step, from: 'end', least: 'PT0S', kind: 'quality' }
    : { step, from: 'end', least: 'PT0S', most, kind: 'safety' }

const stepOf = (carry: Step, id: string, order: string, role: Step['role'], way?: Way): Step => ({
  id,
  dish: carry.dish,
  order,
  does: '',
  role,
  where: 'kitchen',
  ways: way ? [way] : [],
  after: [],
})

/** Behind what stands before the carrying step; where it is the first, behind it. */
const keyBefore = (own: readonly Step[], carry: Step): string => {
  const before = own
    .map(({ order }) => order)
    .filter((order) => order < carry.order)
    .sort()
    .at(-1)
  return `${before ?? carry.order}V`
}

/** What waited for the way waits for the heating, and for no longer than before; the heating that there is waits for the fridge. */
const changedOf = (
  step: Step,
  carry: string,
  there: Step | undefined,
  { fridge, heat }: Pick<ColdWay, 'fridge' | 'heat'>,
): Cold['changed'] => {
  if (!step.after.some((after) => after.step === carry)) return []
  if (step.id === there?.id) {
    const after = step.after.map((one) => (one.step === carry ? wait(fridge, OUT_AFTER) : one))
    return [{ id: step.id, after, until: { ...step.until, coreC: Math.max(REHEAT_C, step.until?.coreC ?? 0) } }]
  }
  return [{ id: step.id, after: step.after.map((one) => (one.step === carry ? { ...one, step: heat } : one)) }]
}

const hasAll = (around: Around, kitchen: string, uses: readonly Use[]): boolean => {
  const kit: readonly Kit[] = around.kitchens.find(({ id }) => id === kitchen)?.kit ?? []
  return uses.every((use) => kit.some((one) => serves(one, use)))
}
