import type { Act, CookModel, SpareModel } from './model.ts'
import type { Place } from './place.ts'
import type { Problem, Spare, Tick } from './problem.ts'
import type { Trial } from './scratch.ts'

const NONE: readonly SpareModel[] = []

/** For each activity, in the problem's order: the spares that are of it. */
export const sparesOf = ({ spares, activities, cooks }: Problem): readonly (readonly SpareModel[])[] => {
  if (!spares) return activities.map(() => NONE)
  const index = new Map(cooks.map(({ id }, at) => [id, at]))
  const sets = spares.map((spare) => (spare.activities ? new Set(spare.activities) : null))
  const model = ({ cook, from, to, price }: Spare): SpareModel[] => {
    const at = index.get(cook)
    return at === undefined ? [] : [{ cook: at, from, to, price }]
  }
  return activities.map(({ id }) => spares.flatMap((spare, at) => (sets[at]?.has(id) === false ? [] : model(spare))))
}

/** What it costs that the cook is at the activity in [from, to). */
export const sparePrice = ({ spares }: Act, cook: CookModel, from: Tick, to: Tick): number => {
  let sum = 0
  for (let i = 0; i < spares.length; i++) {
    const spare = spares[i] as SpareModel
    if (spare.cook !== cook.index) continue
    const ticks = Math.min(to, spare.to) - Math.max(from, spare.from)
    if (ticks > 0) sum += spare.price * ticks
  }
  return sum
}

/** What a team costs that is at the activity in [from, to), whoever touches it. */
export const spareTeamPrice = (act: Act, team: readonly CookModel[], from: Tick, to: Tick): number => {
  if (act.spares.length === 0) return 0
  let sum = 0
  for (let i = 0; i < team.length; i++) sum += sparePrice(act, team[i] as CookModel, from, to)
  return sum
}

/** What the touches of a trial cost. */
export const spareTouchPrice = (act: Act, trial: Trial): number => {
  if (act.spares.length === 0) return 0
  let sum = 0
  for (let i = 0; i < trial.touches; i++) {
    const at = trial.at[i] as Tick
    sum += sparePrice(act, trial.cook[i] as CookModel, at, at + (trial.takes[i] as number))
  }
  return sum
}

/** What a placed activity costs, its touches included. */
export const sparedOf = ({ act, pieces }: Place): number => {
  if (act.spares.length === 0) return 0
  let sum = 0
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i] as Place['pieces'][number]
    sum += sparePrice(act, piece.cook, piece.from, piece.to)
  }
  return sum
}
