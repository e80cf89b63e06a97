import { arrivalsOf, placedOf, waitsOf } from './placed.ts'
import type { Problem } from './problem.ts'
import type { Breach, Schedule } from './schedule.ts'

/** Every broken wish once (W1–W6): lags, keeping, carrying, waits and sit-down, in the problem's order. */
export const breaches = (problem: Problem, schedule: Schedule): Breach[] => [
  ...brokenLags(problem, schedule),
  ...tooLongKept(problem, schedule),
  ...tooLongCarried(problem, schedule),
  ...tooLongWaits(problem, schedule),
  ...lateSitDown(problem, schedule),
]

const brokenLags = (problem: Problem, schedule: Schedule): Breach[] => {
  const placed = new Map(placedOf(problem, schedule).map((one) => [one.activity.id, one]))
  return problem.lags.flatMap((lag, index): Breach[] => {
    const before = placed.get(lag.from)
    const after = placed.get(lag.to)
    if (!before || !after || after.activity.fact || lag.most === undefined || lag.bound === 'safety') return []
    const edge = before.placement[lag.edge]
    const to = after.placement.start
    return to - edge > lag.most ? [{ kind: 'lag', lag: index, from: edge, to, by: to - edge - lag.most }] : []
  })
}

const tooLongKept = (problem: Problem, schedule: Schedule): Breach[] =>
  arrivalsOf(problem, schedule).flatMap(({ delivery, ready, arrival, served, allFacts }): Breach[] => {
    const by = arrival - ready - delivery.keeps.most
    if (served || by <= 0 || (delivery.keeps.bound === 'safety' && !allFacts)) return []
    return [{ kind: 'keeps', delivery: delivery.id, from: ready, to: arrival, by }]
  })

const tooLongCarried = (problem: Problem, schedule: Schedule): Breach[] =>
  arrivalsOf(problem, schedule).flatMap(({ delivery, carried, served, allFacts }): Breach[] => {
    if (!carried || !delivery.carry || served || (delivery.carry.bound === 'safety' && !allFacts)) return []
    const by = carried.to - carried.from - delivery.carry.most
    return by > 0 ? [{ kind: 'carry', delivery: delivery.id, ...carried, by }] : []
  })

const tooLongWaits = (problem: Problem, schedule: Schedule): Breach[] =>
  waitsOf(problem, schedule).flatMap(({ serving, since, moment, wait }): Breach[] =>
    serving.fact || wait <= serving.wait.most
      ? []
      : [{ kind: 'wait', serving: serving.id, from: since, to: moment, by: wait - serving.wait.most }],
  )

const lateSitDown = (problem: Problem, schedule: Schedule): Breach[] =>
  problem.servings.flatMap((serving): Breach[] => {
    const moment = schedule.servings.find((one) => one.serving === serving.id)?.toTable
    if (serving.role.kind !== 'first' || serving.fact || moment === undefined || moment <= serving.role.sitDown) return []
    return [{ kind: 'sit-down', serving: serving.id, from: serving.role.sitDown, to: moment, by: moment - serving.role.sitDown }]
  })
