import type { Activity, Lag, Problem } from '#lib/scheduling/problem.ts'
import { dice } from './dice.ts'
import { activity, cook, delivery, mode, problem, serving } from './small-problem.ts'

/**
 * A couple that cooks and eats: two or three courses, the last ones with work that wants doing while the guests sit, then
 * plating. Small enough for brute force, in [0, 31). The same seed gives the same problem.
 */
export const coupleProblem = (seed: number): Problem => {
  const d = dice(seed)
  const sitDown = d.int(1, 3)
  const courses = d.pick([1, 1, 2])
  const next = ['main', 'sweet'].slice(0, courses)
  const activities: Activity[] = []
  const lags: Lag[] = []
  for (const of of next) {
    const plate = activity(`${of}-plate`, mode('hands-on', d.int(1, 3), { cooks: d.pick([1, 1, 2]) }), {
      delivery: of,
      plating: true,
    })
    for (let i = courses === 1 ? d.int(2, 3) : 1; i > 0; i--) {
      const id = `${of}-${i}`
      const care = d.pick(['hands-on', 'hands-on', 'eye', 'leave'] as const)
      const touch = { when: d.pick(['in', 'out'] as const), takes: 1, lateBy: d.int(0, 2) }
      activities.push(activity(id, mode(care, d.int(2, 5), care === 'leave' ? { touches: [touch] } : {}), { delivery: of }))
      lags.push({ from: id, edge: 'end', to: plate.id, least: 0, most: d.int(1, 6), bound: 'quality' })
    }
    activities.push(plate)
  }
  return problem({
    horizon: { from: 0, to: 22 },
    activities,
    lags,
    cooks: ['ann', 'bo'].map((id) => cook(id, { host: true, eats: true, presence: [{ place: 'home', from: 0, to: 22 }] })),
    servings: [
      serving('first', { role: { kind: 'first', sitDown }, earliest: sitDown, eating: d.int(2, 5), clearing: 1 }),
      ...next.map((id) => serving(id, { eating: d.int(3, 6), clearing: 1, wait: { ideal: [0, d.int(1, 4)], most: 6 } })),
    ],
    deliveries: next.map((id) =>
      delivery(id, id, { early: d.int(0, 1), keeps: { most: d.int(0, 2), bound: 'quality', place: 'home', uses: [] } }),
    ),
  })
}
