import { expect, test } from 'vitest'
import type { Activity, Problem } from '#lib/scheduling/problem.ts'
import { randomProblem } from '#tests/support/random-problem.ts'

const someActivity = (of: (activity: Activity) => unknown) => (problem: Problem) => problem.activities.some(of)
const modes = (activity: Activity) => activity.modes
const uses = (activity: Activity) => modes(activity).flatMap((mode) => mode.uses)

const FEATURES: Record<string, (problem: Problem) => unknown> = {
  'one activity': ({ activities }) => activities.length === 1,
  'six activities': ({ activities }) => activities.length === 6,
  'several modes': someActivity((activity) => modes(activity).length > 1),
  'two cooks at once': someActivity((activity) => modes(activity).some(({ cooks }) => cooks > 1)),
  eye: someActivity((activity) => modes(activity).some(({ care }) => care === 'eye')),
  'longer by choice': someActivity((activity) => modes(activity).some(({ upTo }) => upTo)),
  'touch in, out': someActivity((activity) => modes(activity).some(({ touches }) => touches.length > 1)),
  'touch every': someActivity((activity) =>
    modes(activity).some(({ touches }) => touches.some(({ when }) => typeof when === 'object')),
  ),
  'a window': someActivity((activity) => activity.to),
  'at the table': someActivity(({ at }) => at === 'table'),
  'a road': someActivity(({ road }) => road),
  'a vessel': someActivity(({ vessel }) => vessel),
  claims: someActivity(({ claimed }) => claimed.length > 0),
  plating: someActivity(({ plating }) => plating),
  chores: someActivity(({ delivery }) => !delivery),
  rings: someActivity((activity) => uses(activity).some(({ kind }) => kind === 'ring')),
  stores: someActivity((activity) => uses(activity).some(({ kind }) => kind === 'store')),
  'a named oven': someActivity((activity) => uses(activity).some((use) => use.kind === 'oven' && use.oven)),
  'a preheated oven': someActivity((activity) => uses(activity).some((use) => use.kind === 'oven' && use.preheated)),
  'a shut door': someActivity((activity) => uses(activity).some((use) => use.kind === 'oven' && use.doorShut)),
  done: someActivity(({ fact }) => fact?.kind === 'done'),
  running: someActivity(({ fact }) => fact?.kind === 'running'),
  'safety lags': ({ lags }) => lags.some(({ bound, most }) => bound === 'safety' && most !== undefined),
  'quality lags': ({ lags }) => lags.some(({ bound, most }) => bound === 'quality' && most !== undefined),
  'lags from a start': ({ lags }) => lags.some(({ edge }) => edge === 'start'),
  together: ({ together }) => together.length > 0,
  'two places': ({ cooks }) => cooks.some(({ presence }) => presence.some(({ place }) => place === 'mill')),
  pace: ({ cooks }) => cooks.some(({ pace }) => pace !== 1),
  welcome: ({ servings }) => servings.some(({ role }) => role.kind === 'welcome'),
  'a next serving': ({ servings }) => servings.some(({ role }) => role.kind === 'next'),
  'a lead': ({ servings }) => servings.some(({ lead }) => lead),
  served: ({ servings }) => servings.some(({ fact }) => fact),
  'plates off': ({ servings }) => servings.some(({ fact }) => fact?.platesOff),
  'keeping kit': ({ deliveries }) => deliveries.some(({ keeps }) => keeps.uses.length > 0),
  'keeping safe': ({ deliveries }) => deliveries.some(({ keeps }) => keeps.bound === 'safety'),
  carry: ({ deliveries }) => deliveries.some(({ carry }) => carry),
  'what was told': ({ previous }) => previous?.some(({ frozen }) => frozen),
}

test('random problems use everything that a problem can hold', () => {
  const problems = Array.from({ length: 300 }, (_, seed) => randomProblem(seed))
  const rare = Object.entries(FEATURES).flatMap(([name, has]) => (problems.filter(has).length >= 3 ? [] : [name]))
  expect(rare).toEqual([])
  expect(randomProblem(17)).toEqual(randomProblem(17))
})
