import type * as Y from 'yjs'
import { durationOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { sameTool } from '#lib/domain/kit-wants.ts'
import type { Kitchen, Use } from '#lib/domain/kitchen.ts'
import { type After, type Guard, Step } from '#lib/domain/menu.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import { addStep } from './add.ts'
import { type EditFault, refusedBy } from './fault.ts'
import { type Patch, setEach } from './set.ts'
import { idTaken } from './siblings.ts'

/** What is to be guarded, for which need, and what the steps are called: without a guest's name, since everybody reads the plan. */
export interface GuardWish {
  readonly dish: string
  readonly need: string
  readonly words: Readonly<Record<Guard['does'], string>>
  /** Last-minute steps of other dishes with the allergen: they wait until this plate is covered, or plated. */
  readonly behind: readonly string[]
}

type Around = Pick<Evening, 'host' | 'kitchens' | 'dishes' | 'steps'>
type Minutes = readonly [least: number, likely: number, most: number]

// Common practice, no source.
const TAKES: Readonly<Record<Guard['does'], Minutes>> = { begin: [3, 5, 8], cover: [1, 1, 2], plate: [1, 2, 3], carry: [1, 1, 2] }
const OWN_TOOLS = ['board', 'pan', 'spoon']
const WORKTOP: Use = { kind: 'worktop', places: 1 }

const waitFor = (step: string): After => ({ step, from: 'end', least: 'PT0S', kind: 'quality' })

/** A board, a pan and a spoon for this plate alone, as far as the kitchen counts such things. */
const ownTools = (kitchen: Kitchen | undefined): Use[] =>
  OWN_TOOLS.flatMap((tool) => {
    const found = kitchen?.kit.find((kit) => kit.kind === 'tool' && sameTool(kit.tool, tool))
    return found?.kind === 'tool' ? [{ kind: 'tool' as const, tool: found.tool, count: 1 }] : []
  })

const guardStep = (
  wish: GuardWish,
  id: string,
  does: Guard['does'],
  uses: readonly Use[],
  after: readonly After[],
  role: Step['role'],
): Omit<Step, 'order'> => {
  const [least, likely, most] = TAKES[does]
  const span = { least: durationOf(least * 60), likely: durationOf(likely * 60), most: durationOf(most * 60) }
  return {
    id,
    dish: wish.dish,
    does: wish.words[does],
    role,
    where: does === 'carry' ? 'table' : 'kitchen',
    ways: [{ care: 'hands-on', cooks: 1, takes: span, touches: [], uses: [...uses] }],
    after: after.slice(0, 20),
    guard: { for: wish.need, does },
  }
}

/** Everything that a step waits for, however far back. */
const beforeOf = (steps: readonly Step[], from: readonly string[]): ReadonlySet<string> => {
  const found = new Set(from)
  const todo = [...from]
  for (let id = todo.pop(); id !== undefined; id = todo.pop())
    for (const { step } of steps.find((one) => one.id === id)?.after ?? [])
      if (!found.has(step)) {
        found.add(step)
        todo.push(step)
      }
  return found
}

const isServing = ({ role }: Step): boolean => role === 'plate' || role === 'carry'

type Ids = Readonly<Record<Guard['does'], string>>
type Placed = readonly [step: Omit<Step, 'order'>, place: Place]

/** The four guards of a method, each where it stands in it. */
const guardsOf = (wish: GuardWish, ids: Ids, method: readonly Step[], tools: readonly Use[]): readonly Placed[] => {
  const made = method.filter((step) => !isServing(step))
  const waitedFor = new Set(made.flatMap((step) => step.after.map((after) => after.step)))
  const last = made.filter((step) => !waitedFor.has(step.id)).map(({ id }) => id)
  const lastMade = made[made.length - 1]
  const carries = method.filter(({ role }) => role === 'carry').map(({ id }) => id)
  // What is finished at the table is covered there, otherwise where it is made.
  const role = lastMade?.role === 'finish' ? 'finish' : 'make'
  return [
    [guardStep(wish, ids.begin, 'begin', [WORKTOP, ...tools], [], 'make'), { kind: 'first' }],
    [
      guardStep(wish, ids.cover, 'cover', [], (last.length > 0 ? last : [ids.begin]).map(waitFor), role),
      { kind: 'after', id: lastMade?.id ?? ids.begin },
    ],
    [
      guardStep(wish, ids.plate, 'plate', [WORKTOP], [ids.cover, ...carries].map(waitFor), 'plate'),
      { kind: 'after', id: ids.cover },
    ],
    [guardStep(wish, ids.carry, 'carry', [], [waitFor(ids.plate)], 'plate'), { kind: 'after', id: ids.plate }],
  ]
}

type Wait = readonly [step: Step, on: string]

/** What of the dish, and of others, waits for a guard; nothing that the dish itself waits for. */
const waitsOf = (around: Around, wish: GuardWish, ids: Ids, method: readonly Step[]): readonly Wait[] => {
  const ownIds = new Set(method.map(({ id }) => id))
  const isFinishing = method.some(({ role }) => role === 'finish')
  const earlier = beforeOf(around.steps, [...ownIds])
  return [
    ...method
      .filter((step) => !isServing(step) && !step.after.some((after) => ownIds.has(after.step)))
      .map((step) => [step, ids.begin] as const),
    ...method
      .filter((step) => step.role === 'plate' || (step.role === 'carry' && !isFinishing))
      .map((step) => [step, step.role === 'plate' ? ids.plate : ids.cover] as const),
    ...around.steps
      .filter((step) => wish.behind.includes(step.id) && !earlier.has(step.id))
      .map((step) => [step, step.role === 'plate' ? ids.plate : ids.cover] as const),
  ].filter(([step, on]) => step.after.length < 20 && !step.after.some((after) => after.step === on))
}

const faultOf = (doc: Y.Doc, adds: readonly Placed[]): EditFault | null => {
  for (const [step] of adds) {
    const parsed = Step.safeParse({ ...step, order: '0' })
    if (!parsed.success) return refusedBy(parsed.error)
    if (idTaken(doc, step.id)) return { kind: 'id-taken', id: step.id }
  }
  return null
}

/**
 * Puts what a severe allergy asks for into the method of a dish, in one update: a clean start with a board, pan and spoon of its own, the
 * cover, its plate before the others, and its way to the table, which one cook takes as a claim. Guards that are there stay as they are.
 * What is named in `behind` waits for the cover, or for the plate when it is plating, unless this dish waits for it. Gives back the step
 * of the way to the table.
 */
export const guardPlate = (doc: Y.Doc, around: Around, wish: GuardWish, newId: () => string): Result<string, EditFault> => {
  const dish = around.dishes.find(({ id }) => id === wish.dish)
  if (!dish) return fail({ kind: 'unknown-entry', root: 'dishes', id: wish.dish })
  const own = around.steps.filter((step) => step.dish === wish.dish)
  const there = new Map(own.flatMap(({ id, guard }) => (guard?.for === wish.need ? [[guard.does, id] as const] : [])))
  const method = own.filter(({ guard }) => guard?.for !== wish.need)
  const idFor = (does: Guard['does']) => there.get(does) ?? newId()
  const ids: Ids = { begin: idFor('begin'), cover: idFor('cover'), plate: idFor('plate'), carry: idFor('carry') }
  const tools = ownTools(around.kitchens.find(({ id }) => id === dish.kitchen))
  const adds = guardsOf(wish, ids, method, tools).filter(([step]) => !own.some(({ id }) => id === step.id))
  const fault = faultOf(doc, adds)
  if (fault) return fail(fault)
  return doc.transact(() => {
    for (const [step, place] of adds) {
      const added = addStep(doc, step, place)
      if (!added.ok) return added
    }
    const waits = waitsOf(around, wish, ids, method).map(([step, on]): [string, Patch<'steps'>] => [
      step.id,
      { after: [...step.after, waitFor(on)] },
    ])
    const written = setEach(doc, 'steps', waits)
    return written.ok ? ok(ids.carry) : written
  })
}
