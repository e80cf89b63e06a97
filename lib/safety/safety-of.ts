import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import { CHECKS } from './checks.ts'
import type { DishTime, Finding, Weight } from './finding.ts'
import { softLimit } from './fixes.ts'
import { atTable, coldLimit, isUnsure, type SafetyOptions, scenesOf } from './scene.ts'
import { minutesBetween } from './walk.ts'

/**
 * What is to be known of the food's safety over a running order, dish by dish, the gravest first. Under each rules what is named in `rules.ts`;
 * for standing out the shortest limit of all. No finding is not "safe": local rules and the thermometer decide.
 */
export const safetyOf = (evening: Evening, order: RunningOrder, options: SafetyOptions = {}): readonly Finding[] =>
  scenesOf(evening, order, options)
    .flatMap((scene) => CHECKS.flatMap((check) => check(scene)))
    .toSorted((a, b) => RANK[a.weight] - RANK[b.weight])

const RANK: Readonly<Record<Weight, number>> = { beyond: 0, do: 1 }

/** How long each dish that is perishable stands out before it is on the table, and until when what is left may go in the fridge. */
export const dishTimes = (evening: Evening, order: RunningOrder, options: SafetyOptions = {}): readonly DishTime[] =>
  scenesOf(evening, order, options).flatMap((scene): DishTime[] => {
    const out = atTable(scene)
    if (out === null || scene.toTable === null) return []
    return [
      {
        dish: scene.dish.id,
        since: out.since,
        toTable: scene.toTable,
        minutes: minutesBetween(out.since, scene.toTable),
        most: scene.out.value,
        leftoversBy: out.since + scene.out.value * 60_000,
        unsure: isUnsure(scene),
      },
    ]
  })

/** Limits that this order keeps, and that the plan does not ask of the next one: each an edit that makes it hard. */
export const softLimits = (evening: Evening, order: RunningOrder, options: SafetyOptions = {}): readonly SafeFix[] =>
  scenesOf(evening, order, options).flatMap((scene) =>
    scene.walked.flatMap(({ timed, before }): readonly SafeFix[] => {
      if (timed.place === 'room' || before.out === null || before.cookedAt === null) return []
      const { value } = timed.place === 'heat' ? scene.out : coldLimit(scene, before)
      const limit = minutesBetween(before.out.since, timed.start) <= value ? softLimit(timed.step, before.out, value) : null
      return limit === null ? [] : [limit]
    }),
  )
