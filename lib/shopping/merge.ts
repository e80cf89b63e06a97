import { keepsDays } from './aisles.ts'
import { foodKey, isFromTheTap, isWeighedReady } from './food-key.ts'
import type { Part } from './line.ts'
import type { Exact, Refuse, Wanted } from './wanted.ts'

/** What several dishes want of one food in one measure, for one home and, where it is bought fresh, one day. */
export interface Merged {
  readonly key: string
  /** As the first recipe writes it. */
  readonly food: string
  readonly unit: string | null
  readonly parts: readonly Part[]
  readonly refuse: Refuse | null
  readonly home: string | null
  /** The earliest day on which any of it is used. */
  readonly day: number | null
  readonly wanted: readonly Wanted[]
}

const UNIT_LONGEST = 18

const keyOf = (food: string, unit: string | null, home: string | null, day: number | null): string =>
  [
    food,
    unit === null ? 'taste' : unit.replaceAll('|', ' ').slice(0, UNIT_LONGEST),
    home === null ? '' : `@${home}`,
    day === null ? '' : `d${day}`,
  ]
    .filter((part, index) => index < 2 || part !== '')
    .join('|')

const groupBy = <T>(items: readonly T[], keyOfItem: (item: T) => string): readonly (readonly T[])[] => {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const key = keyOfItem(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return [...groups.values()]
}

/**
 * Adds up what can be added: weights with weights, volumes with volumes, things of one count with their like. A volume is weighed where a
 * table gives its food one density and another dish wants it by weight; else the two stay two lines. Homes do not share, nor do two days a
 * food that is bought fresh.
 */
export const merge = (wanted: readonly Wanted[]): readonly Merged[] =>
  groupBy(
    wanted.filter(({ food }) => !isFromTheTap(food)),
    (each) => `${foodKey(each.food)}|${each.home ?? ''}`,
  ).flatMap((ofFood) => {
    const fresh = ofFood.some(({ food }) => keepsDays(food) === 0)
    if (!fresh) return measuresOf(ofFood, null)
    const last = Math.max(...ofFood.map(dayOf))
    return groupBy(ofFood, (each) => String(dayOf(each))).flatMap((ofDay) => {
      const day = ofDay[0] ? dayOf(ofDay[0]) : last
      return measuresOf(ofDay, day === last ? null : day)
    })
  })

const dayOf = ({ day }: Wanted): number => day ?? 0

const measuresOf = (wanted: readonly Wanted[], day: number | null): readonly Merged[] => {
  const hasWeight = wanted.some(({ measure }) => measure.kind === 'mass')
  const lines = groupBy(
    wanted.filter(({ measure }) => measure.kind !== 'taste'),
    (each) => unitOf(each, hasWeight) ?? '',
  ).map((ofUnit) => mergedOf(ofUnit, hasWeight, day))
  const tasted = wanted.filter(({ measure }) => measure.kind === 'taste')
  if (tasted.length === 0) return lines
  const [first, ...others] = lines
  if (!first) return [mergedOf(tasted, hasWeight, day)]
  const { parts, wanted: before } = first
  return [
    { ...first, parts: [...parts, ...tasted.map((each) => partOf(each, hasWeight))], wanted: [...before, ...tasted] },
    ...others,
  ]
}

const unitOf = ({ measure, gramsPerMl }: Wanted, hasWeight: boolean): string | null => {
  switch (measure.kind) {
    case 'mass':
      return 'g'
    case 'volume':
      return hasWeight && gramsPerMl ? 'g' : 'ml'
    case 'count':
      return measure.unit
    case 'taste':
      return null
  }
}

const partOf = (each: Wanted, hasWeight: boolean): Part => {
  const { ingredient, dish, food, measure, gramsPerMl } = each
  const ready = each.refuse !== null && isWeighedReady(food)
  const part = { ingredient, dish, food, weighed: null, ready }
  switch (measure.kind) {
    case 'mass':
      return { ...part, n: measure.grams }
    case 'volume':
      return hasWeight && gramsPerMl
        ? { ...part, n: measure.ml.mul(gramsPerMl.value), weighed: { ml: measure.ml, source: gramsPerMl.source } }
        : { ...part, n: measure.ml }
    case 'count':
      return { ...part, n: measure.n }
    case 'taste':
      return { ...part, n: null }
  }
}

const mergedOf = (wanted: readonly Wanted[], hasWeight: boolean, day: number | null): Merged => {
  const first = wanted[0]
  if (!first) throw new RangeError('a line of nothing')
  const unit = unitOf(first, hasWeight)
  const days = wanted.flatMap((each) => (each.day === null ? [] : [each.day]))
  return {
    key: keyOf(foodKey(first.food), unit, first.home, day),
    food: first.food,
    unit,
    parts: wanted.map((each) => partOf(each, hasWeight)),
    refuse: unit === 'g' ? (wanted.find(({ refuse }) => refuse !== null)?.refuse ?? null) : null,
    home: first.home,
    day: days.length > 0 ? Math.min(...days) : null,
    wanted,
  }
}

/** What is to be bought for these parts: more where the weight is of what is ready to cook. */
export const purchased = (parts: readonly Part[], refuse: Refuse | null, weighed: 'bought' | 'ready' | undefined): Exact | null =>
  parts.reduce<Exact | null>((sum, { n, ready }) => {
    if (n === null) return sum
    const isReady = refuse !== null && (weighed === undefined ? ready : weighed === 'ready')
    const more = isReady ? n.mul(100).div(100 - refuse.percent) : n
    return sum === null ? more : sum.add(more)
  }, null)
