import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'

type Chore = Omit<Step, 'order' | 'dish' | 'role'>

const chore = (id: string, does: string, minutes: number): Chore => ({
  id: `closing-${id}`,
  does,
  where: 'kitchen',
  ways: [{ care: 'hands-on', cooks: 1, takes: spanFromUsual(minutes * 60), touches: [], uses: [] }],
  after: [],
})

/** What most evenings end with, in words of our own: common practice, no source. */
export const CLOSING: readonly Chore[] = [
  chore('leftovers', 'Leftovers into shallow boxes and into the fridge', 10),
  chore('heat-off', 'Ovens and rings off', 2),
  chore('dishwasher', 'Fill the dishwasher and start it', 15),
  chore('pots', 'Wash pots and pans', 20),
  chore('rubbish', 'Rubbish out, worktops wiped', 8),
]

/** The usual ones that the plan does not have. */
export const closingToAdd = (evening: Evening): readonly Chore[] =>
  CLOSING.filter(({ id }) => !evening.steps.some((step) => step.id === id))

export interface Share {
  readonly target: string
  readonly cook: string
}

/** What nobody has, to each cook in turn, whoever missed least at the table first; who has gone has nothing to do. */
export const shareOut = (evening: Evening, order: RunningOrder, chores: readonly Step[]): readonly Share[] => {
  const gone = new Set(evening.night.flatMap((fact) => ('cook' in fact && fact.back === undefined ? [fact.cook] : [])))
  const missed = new Map(order.cooks.map(({ cook, missed: of }) => [cook, of]))
  const had = (cook: string): number =>
    chores.filter(({ id }) => evening.claims.some((claim) => claim.target === id && claim.cook === cook)).length
  const minutes = (cook: string): number => secondsOf(missed.get(cook) ?? 'PT0S')
  const cooks = evening.cooks.filter(({ id }) => !gone.has(id)).map(({ id }) => id)
  const load = new Map(cooks.map((cook) => [cook, had(cook)]))
  return chores
    .filter(({ id }) => !evening.claims.some(({ target }) => target === id))
    .flatMap(({ id }) => {
      const [next] = cooks.toSorted((a, b) => (load.get(a) ?? 0) - (load.get(b) ?? 0) || minutes(a) - minutes(b))
      if (next === undefined) return []
      load.set(next, (load.get(next) ?? 0) + 1)
      return [{ target: id, cook: next }]
    })
}
