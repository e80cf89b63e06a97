import { type Activity, CALM_HOUR, type Problem } from '#lib/scheduling/problem.ts'
import { dice } from './dice.ts'
import { activity, cook, delivery, mode, problem, serving } from './small-problem.ts'

/** When the first course is served in these problems, and when they end. */
const FIRST = 22
const END = 44

/**
 * A problem of seven to ten steps of what `timeIndexed` can say: hands-on by one cook or left alone, one way each, one
 * class of ring and one worktop, claims, absences, lags, two dishes for the second course, no hosts. It leaves out eyes,
 * touches, ovens, vessels, keeping kit, paces, several places and facts.
 */
export const plainProblem = (seed: number): Problem => {
  const d = dice(seed)
  const cooks = ['ann', 'bo'].slice(0, d.pick([1, 2, 2])).map((id) =>
    cook(id, {
      eats: true,
      presence: d.chance(0.3)
        ? [
            { place: 'home', from: 0, to: 8 },
            { place: 'home', from: 12, to: END },
          ]
        : [{ place: 'home', from: 0, to: END }],
    }),
  )
  const deliveries = ['soup', 'pie'].map((id) =>
    delivery(id, 'second', {
      early: d.int(0, 3),
      late: 0,
      keeps: { most: d.int(0, 4), bound: 'quality', place: 'home', uses: [] },
    }),
  )
  const chains = deliveries.map(({ id }) =>
    Array.from({ length: d.int(3, 5) }, (_, step): Activity => {
      const care = d.pick(['hands-on', 'hands-on', 'leave'] as const)
      const uses = d.pick([[], [{ kind: 'ring', size: 1 }], [{ kind: 'store', of: 'top', amount: 1 }]] as const)
      return activity(`${id}-${step}`, mode(care, d.int(1, 5), { uses }), {
        delivery: id,
        claimed: d.chance(0.2) ? [d.pick(cooks).id] : [],
      })
    }),
  )
  return problem({
    horizon: { from: 0, to: END },
    activities: chains.flat(),
    lags: chains.flatMap((chain) =>
      chain.slice(1).map((to, before) => {
        const least = d.int(0, 1)
        return {
          from: chain[before]?.id ?? '',
          to: to.id,
          edge: 'end' as const,
          least,
          ...(d.chance(0.5) ? { most: least + d.int(0, 4) } : {}),
          bound: 'quality' as const,
        }
      }),
    ),
    cooks,
    kit: [
      { kind: 'ring', id: 'ring', place: 'home', size: 1, count: 1 },
      { kind: 'store', id: 'top', place: 'home', of: 'top', capacity: 1 },
    ],
    servings: [
      serving('first', { role: { kind: 'first', sitDown: FIRST }, earliest: FIRST, eating: d.int(4, 7), clearing: 1 }),
      serving('second', { pouring: 1, wait: { ideal: [1, d.int(1, 3)], most: 5 } }),
    ],
    deliveries,
  })
}

/**
 * The same as a linear program in whole numbers, written in the CPLEX LP format: a variable for every step, cook and start
 * (Pritsker, Watters, Wolfe 1969, "Multiproject scheduling with limited resources"). The first course has no dish, so it is
 * never worth serving it late. Shares nothing with the engine but the problem.
 */
export const timeIndexed = (of: Problem): string => {
  const { weights: w, activities, cooks } = of
  const [first, second] = of.servings
  if (!first || !second) throw new Error('two servings')
  const platesOff = FIRST + first.eating + first.clearing
  const moments = Array.from({ length: END }, (_, t) => t).filter((t) => t >= platesOff + second.pouring)
  const cost: string[] = []
  const rules: string[] = []
  const binary: string[] = []
  const term = (factor: number, name: string) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`
  const overlap = (a: number, b: number, from: number, to: number) => Math.max(0, Math.min(b, to) - Math.max(a, from))

  const starts = activities.map((one) => {
    const [way] = one.modes
    const length = way?.likely ?? 0
    const hands = way?.care === 'hands-on'
    const who = !hands ? [null] : cooks.filter(({ id }) => one.claimed.length === 0 || one.claimed.includes(id))
    const all = who.flatMap((doer) =>
      Array.from({ length: END - length + 1 }, (_, t) => t)
        .filter((t) => !doer || doer.presence.some(({ from, to }) => from <= t && t + length <= to))
        .map((t) => ({ t, doer, name: `x_${activities.indexOf(one)}_${doer ? cooks.indexOf(doer) : 'n'}_${t}` })),
    )
    binary.push(...all.map(({ name }) => name))
    for (const { t, doer, name } of all) {
      const up = doer ? overlap(t, t + length, FIRST, END) : 0
      const meal = doer ? overlap(t, t + length, FIRST, FIRST + first.eating) : 0
      const calm = doer ? overlap(t, t + length, FIRST - CALM_HOUR, FIRST) : 0
      cost.push(term(w.missed * up + w.meal * meal + w.calm * calm - (w.early * (t + length)) / 100, name))
    }
    rules.push(`${all.map(({ name }) => `+ ${name}`).join(' ')} = 1`)
    return { one, length, hands, all, uses: way?.uses ?? [] }
  })
  const startOf = (id: string, factor: number) =>
    (starts.find(({ one }) => one.id === id)?.all ?? []).map(({ t, name }) => term(factor * t, name)).join(' ')
  const lengthOf = (id: string) => starts.find(({ one }) => one.id === id)?.length ?? 0

  binary.push(...moments.map((t) => `m_${t}`))
  rules.push(`${moments.map((t) => `+ m_${t}`).join(' ')} = 1`)
  const moment = (factor: number) => moments.map((t) => term(factor * t, `m_${t}`)).join(' ')
  for (const t of moments) {
    const wait = t - platesOff
    const { ideal, most } = second.wait
    const outside = Math.max(0, ideal[0] - wait) + Math.max(0, wait - ideal[1])
    cost.push(term(w.wait * outside + w.longWait * Math.max(0, wait - most) + (w.early * activities.length * t) / 100, `m_${t}`))
  }
  for (const [index, { from, to, least, most }] of of.lags.entries()) {
    const apart = `${startOf(to, 1)} ${startOf(from, -1)}`
    rules.push(`${apart} >= ${least + lengthOf(from)}`)
    if (most === undefined) continue
    rules.push(`${apart} - lag_${index} <= ${most + lengthOf(from)}`)
    cost.push(`+ ${w.past} lag_${index}`)
  }
  for (const { id, early, keeps } of of.deliveries) {
    const own = activities.filter((one) => one.delivery === id)
    const last = own.at(-1)?.id ?? ''
    for (const one of own) rules.push(`${moment(1)} ${startOf(one.id, -1)} >= ${lengthOf(one.id)}`)
    rules.push(`${moment(1)} ${startOf(last, -1)} - keep_${id} <= ${early + keeps.most + lengthOf(last)}`)
    cost.push(`+ ${w.past} keep_${id}`)
  }
  for (let now = 0; now < END; now++) {
    const busy = (which: (start: (typeof starts)[number]) => boolean, doer?: unknown) =>
      starts
        .filter(which)
        .flatMap(({ all, length }) => all.filter((x) => x.t <= now && now < x.t + length && (!doer || x.doer === doer)))
        .map(({ name }) => `+ ${name}`)
    const limited = [
      ...cooks.map((doer) => busy(({ hands }) => hands, doer)),
      busy(({ uses }) => uses.some(({ kind }) => kind === 'ring')),
      busy(({ uses }) => uses.some(({ kind }) => kind === 'store')),
    ]
    for (const names of limited) if (names.length > 1) rules.push(`${names.join(' ')} <= 1`)
  }
  for (const doer of cooks) {
    const up = starts.flatMap(({ all, length }) =>
      all
        .filter((x) => x.doer === doer)
        .flatMap(({ t, name }) => {
          const ticks = overlap(t, t + length, FIRST, END)
          return ticks > 0 ? [`- ${ticks} ${name}`] : []
        }),
    )
    if (up.length > 0) rules.push(`most ${up.join(' ')} >= 0`)
  }
  cost.push(`+ ${w.unfair} most`)
  return [
    'Minimize',
    ` obj: ${cost.join('\n ')}`,
    'Subject To',
    ...rules.map((rule, index) => ` r${index}: ${rule}`),
    'Binary',
    ` ${binary.join('\n ')}`,
    'End',
  ].join('\n')
}
