import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { type SafeCore, safeCores } from '#lib/domain/safe-core.ts'
import type { Source } from '#lib/domain/source.ts'
import { type Equivalent, holdAt, SFBB } from './lethality.ts'
import { lineOf } from './line.ts'
import { placeOf } from './walk.ts'

export const FOODSAFETY_GOV: Source = {
  publisher: 'FoodSafety.gov',
  title: 'Cook to a Safe Minimum Internal Temperature',
  year: 2023,
  standing: 'read',
}

/** What is published for the foods of a step: how warm inside, what the cook wrote, and what does as much at other temperatures. */
export interface Doneness {
  readonly cores: readonly SafeCore[]
  readonly source: Source
  /** What the step itself says. */
  readonly coreC: number | null
  /** The step says less than this row asks; null when it says none or enough. */
  readonly low: SafeCore | null
  /** Under the rules of the UK, and where none are named: times and temperatures that are worth the same. */
  readonly equivalents: { readonly rows: readonly Equivalent[]; readonly source: Source } | null
  /** With them, for what the step says: how long all through is worth two minutes at 70 °C. */
  readonly hold: { readonly minutes: number; readonly source: Source } | null
}

/** Colder than this nothing is published. */
const LEAST_HOLD_C = 60

const isHeat = (step: Step): boolean => step.ways.some((way) => placeOf(way) === 'heat')

/**
 * What is published for a step that heats food, when it is the last that cooks it or says a temperature itself; null for all others, which says
 * nothing of their safety. The thermometer decides.
 */
export const donenessOf = (evening: Evening, id: string): Doneness | null => {
  const step = evening.steps.find((each) => each.id === id)
  if (!step || step.dish === null || !isHeat(step)) return null
  const line = lineOf(evening, step)
  const own = evening.ingredients.filter(({ dish }) => dish === step.dish)
  const cores = safeCores(own.filter((ingredient) => ingredient.step === undefined || line.has(ingredient.step)))
  if (cores.length === 0) return null
  const coreC = step.until?.coreC ?? null
  const isLater = evening.steps.some(
    (other) =>
      other.id !== id &&
      other.dish === step.dish &&
      isHeat(other) &&
      lineOf(evening, other).has(id) &&
      other.until?.coreC !== undefined,
  )
  if (coreC === null && isLater) return null
  const low = coreC === null ? null : (cores.find((core) => coreC < core.atLeastC) ?? null)
  const isUk = evening.rules === 'uk' || evening.rules === 'strictest'
  const hold = isUk && coreC !== null && coreC >= LEAST_HOLD_C ? holdAt(coreC) : null
  return { cores, source: FOODSAFETY_GOV, coreC, low, equivalents: isUk ? SFBB : null, hold }
}
