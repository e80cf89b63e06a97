import { CALM_HOUR, type Problem } from '#lib/scheduling/problem.ts'
import { type Builder, type Expr, minus, number, plus, sum } from './builder.ts'
import { mayShareTrip, type Part } from './cooks.ts'
import { leastOf } from './overlap.ts'
import { tableOf } from './table.ts'
import { excess, type Times, total } from './times.ts'

/** Prices are in hundredths, so that they are whole. */
export const HUNDREDTHS = 100

/**
 * The cost, C2-C7, in hundredths: exact but for what is left to the verifier, all of which can only add to it (`allAway`,
 * C8, and what is carried on one trip).
 */
export const writePrice = (m: Builder, problem: Problem, times: Times, parts: readonly Part[]): Expr => {
  const w = problem.weights
  const late = times.courses.flatMap(({ serving, moment }) =>
    serving.role.kind === 'first' ? [excess(m, moment, serving.role.sitDown)] : [],
  )
  const { missed, most, meal } = tableOf(m, problem, times, parts)
  return sum(
    [w.late * HUNDREDTHS, total(late)],
    [HUNDREDTHS, waitsOf(m, problem, times)],
    [w.past * HUNDREDTHS, pastOf(m, problem, times)],
    [w.missed * HUNDREDTHS, missed],
    [w.unfair * HUNDREDTHS, most],
    [w.meal * HUNDREDTHS, meal],
    [w.lead * HUNDREDTHS, leadsOf(m, problem, times, parts)],
    [w.calm * HUNDREDTHS, calmOf(m, times, parts)],
    [w.early, freshOf(m, times)],
  )
}

/** C3. */
const waitsOf = (m: Builder, { weights }: Problem, { courses }: Times): Expr =>
  total(
    courses.flatMap(({ serving, moment }, index) => {
      const since =
        serving.role.kind === 'next'
          ? courses[index - 1]?.platesOff
          : serving.role.kind === 'welcome' && serving.earliest !== undefined
            ? number(serving.earliest)
            : undefined
      if (!since) return []
      const wait = minus(moment, since)
      const { ideal, most } = serving.wait
      const short = excess(m, sum([-1, wait]), -ideal[0])
      return [sum([weights.wait, short], [weights.wait, excess(m, wait, ideal[1])], [weights.longWait, excess(m, wait, most)])]
    }),
  )

/** C4: quality lags, keeping, carrying; the safety ones are held here too (H18). */
const pastOf = (m: Builder, problem: Problem, times: Times): Expr => {
  const byId = new Map(times.acts.map((act) => [act.activity.id, act]))
  const lags = problem.lags.flatMap(({ from, to, edge, most, bound }) => {
    const [a, b] = [byId.get(from), byId.get(to)]
    return a && b && bound === 'quality' && most !== undefined
      ? [excess(m, minus(b.start, edge === 'start' ? a.start : a.end), most)]
      : []
  })
  const bent = (of: Expr, limit: { readonly most: number; readonly bound: 'quality' | 'safety' }): Expr[] => {
    if (limit.bound === 'quality') return [excess(m, of, limit.most)]
    m.atMost(of, limit.most)
    return []
  }
  const dishes = times.dishes.flatMap((dish) => {
    const { delivery, course, ready } = dish
    const keeps = bent(minus(plus(course.moment, -delivery.early), ready), {
      ...delivery.keeps,
      most: Math.max(0, delivery.keeps.most),
    })
    const span = delivery.carry ? carrySpan(m, dish, times) : undefined
    return [...keeps, ...(span && delivery.carry ? bent(span, delivery.carry) : [])]
  })
  return total([...lags, ...dishes])
}

/** From the carrying start to the next start, or to arrival; undefined where what is next is not known beforehand. */
const carrySpan = (
  m: Builder,
  { delivery, course, ready, acts }: Times['dishes'][number],
  { isBefore }: Times,
): Expr | undefined => {
  const [carry, ...more] = acts.filter(({ activity }) => activity.road)
  if (!carry || more.length > 0) return undefined
  const rest = acts.filter((act) => act !== carry && !isBefore(act, carry))
  if (rest.length === 0) return minus(m.max(ready, plus(course.moment, -delivery.early)), carry.start)
  const next = rest.find((act) => isBefore(carry, act) && rest.every((other) => other === act || isBefore(act, other)))
  return next ? minus(next.start, carry.start) : undefined
}

/** C7. */
const freshOf = (m: Builder, times: Times): Expr =>
  total(
    times.dishes.flatMap(({ course, acts, delivery }) =>
      acts.map(({ end }) => {
        const early = minus(course.moment, end)
        return delivery.late === 0 ? early : m.pushedDownTo([early], m.range(early)[1])
      }),
    ),
  )

const leadsOf = (m: Builder, _problem: Problem, times: Times, parts: readonly Part[]): Expr =>
  total(
    times.dishes.flatMap(({ course, acts }) =>
      acts.flatMap((act) => {
        const { lead } = course.serving
        if (!act.activity.plating || lead === undefined) return []
        const own = parts.filter((part) => part.act === act && part.kind !== 'touch')
        if (own.some(({ able, by }) => by.length === 0 && able.some(({ id }) => id === lead))) return []
        const there = own.flatMap(({ by }) => by.filter(({ cook }) => cook.id === lead).map(({ does }) => m.as01(does)))
        return [minus(number(1), total(there))]
      }),
    ),
  )

/** C6: the minutes of the hour before the first course in which hands are busy. */
const calmOf = (m: Builder, { first }: Times, parts: readonly Part[]): Expr =>
  total(
    parts
      .filter((part) => part.kind !== 'eye' && !mayShareTrip(part, parts))
      .map((part) => {
        const since = plus(minus(part.end, first), CALM_HOUR)
        return leastOf(m, [part.size, since, minus(first, part.start), number(CALM_HOUR)], m.range(part.size)[1], part.way.chosen)
      }),
  )
