import type { Evening } from '#lib/domain/evening.ts'
import { coolingRate, coolingTime } from '#lib/domain/newton.ts'
import type { Drink } from '#lib/domain/people.ts'
import type { Amount } from './amounts.ts'

const ROOM_C = 20
const HOUR = 60

/**
 * Common practice, no source: a bottle of a room's heat is ready in two to three hours in the fridge, in twenty to thirty minutes in ice and
 * water. Taken as from 20 to 8 °C, in a place of 4 and of 0 °C.
 */
const PLACES = {
  fridge: { aroundC: 4, minutes: [2 * HOUR, 2.5 * HOUR, 3 * HOUR] },
  ice: { aroundC: 0, minutes: [20, 25, 30] },
} as const
export type ColdPlace = keyof typeof PLACES
const KNOWN_C = 8

export interface ChillMinutes {
  readonly least: number
  readonly likely: number
  readonly most: number
}

/**
 * Minutes that a bottle takes to the heat it is served at, by Newton's law; zeros when it is so already, null when the place does not make it
 * so cold: within a degree of the place itself it would take a night.
 */
export const bottleMinutes = (place: ColdPlace, toC: number, fromC = ROOM_C): ChillMinutes | null => {
  if (toC >= fromC) return { least: 0, likely: 0, most: 0 }
  const { aroundC, minutes } = PLACES[place]
  if (toC < aroundC + 1) return null
  const [least, likely, most] = minutes.map((known) =>
    coolingTime(fromC, toC, aroundC, coolingRate(ROOM_C, KNOWN_C, known, aroundC)),
  )
  return least == null || likely == null || most == null ? null : { least, likely, most }
}

/** Bottles that stand or lie in one place of a fridge; common practice, no source. */
const BOTTLES_A_PLACE = 6
/** What is served warmer than this is not chilled. */
const CELLAR_C = 17

/** What of a course's drinks goes into the fridge, for how long, and how much room it takes. */
export interface Chilling {
  readonly course: string
  readonly drinks: readonly string[]
  readonly bottles: number
  readonly places: number
  /** That of the one that takes longest. */
  readonly minutes: ChillMinutes
  /** Those that a fridge never makes as cold as they are served: they want ice. */
  readonly wantIce: readonly string[]
}

const isChilled = (drink: Drink): drink is Drink & { servedC: number } => drink.servedC !== undefined && drink.servedC < CELLAR_C

/** Course by course what is to be chilled; a course without such a drink, or of which nothing is bought, is left out. */
export const chillings = (evening: Pick<Evening, 'courses' | 'drinks'>, amounts: readonly Amount[]): readonly Chilling[] => {
  const bottlesOf = new Map(amounts.map(({ drink, bottles }) => [drink, bottles]))
  return evening.courses.flatMap((course): Chilling[] => {
    const cold = evening.drinks
      .filter((drink) => drink.course === course.id)
      .filter(isChilled)
      .filter(({ id }) => (bottlesOf.get(id) ?? 0) > 0)
    if (cold.length === 0) return []
    const bottles = cold.reduce((sum, { id }) => sum + (bottlesOf.get(id) ?? 0), 0)
    const times = cold.map(({ id, servedC }) => ({ id, minutes: bottleMinutes('fridge', servedC) }))
    const longest = times
      .flatMap(({ minutes }) => (minutes === null ? [] : [minutes]))
      .reduce((a, b) => (b.likely > a.likely ? b : a), { least: 0, likely: 0, most: 0 })
    const wantIce = times.filter(({ minutes }) => minutes === null).map(({ id }) => id)
    return [
      {
        course: course.id,
        drinks: cold.map(({ id }) => id),
        bottles,
        places: Math.ceil(bottles / BOTTLES_A_PLACE),
        minutes: wantIce.length > 0 ? longerOf(longest) : longest,
        wantIce,
      },
    ]
  })
}

/** What wants ice besides gets as near as the fridge can: within a degree of it. */
const longerOf = (longest: ChillMinutes): ChillMinutes => {
  const near = bottleMinutes('fridge', PLACES.fridge.aroundC + 1)
  return near && near.likely > longest.likely ? near : longest
}
