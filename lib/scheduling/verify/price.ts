import { CALM_HOUR, PLATING_BURST } from '#lib/scheduling/problem.ts'
import type { Breach, Cost } from '#lib/scheduling/schedule.ts'
import type { Busy, Scene } from './scene.ts'
import { common, cut, overlaps, type Span, ticksOf, union } from './span.ts'
import { touchesMissed } from './touches.ts'
import { waitFrom } from './wishes.ts'

/** C1-C8: what the schedule costs, from the definitions. */
export const price = (scene: Scene, breaches: readonly Breach[]): Cost => {
  const goals = {
    safe: safe(scene),
    'on-time': onTime(scene),
    waits: waits(scene),
    keeping: keeping(scene, breaches),
    table: table(scene),
    calm: calm(scene) + spared(scene),
    fresh: fresh(scene),
    unchanged: unchanged(scene),
  }
  return { goals, total: Object.values(goals).reduce((sum, goal) => sum + goal, 0) }
}

const safe = (scene: Scene): number => scene.problem.weights.left * (scene.schedule.left.length + touchesMissed(scene))

const onTime = ({ problem, served }: Scene): number =>
  served.reduce(
    (sum, { serving, moment }) =>
      serving.role.kind === 'first' ? sum + problem.weights.late * Math.max(0, moment - serving.role.sitDown) : sum,
    0,
  )

const waits = (scene: Scene): number =>
  scene.served.reduce((sum, { serving, moment }, index) => {
    const since = waitFrom(scene, index)
    if (since === null) return sum
    const wait = moment - since
    const { ideal, most } = serving.wait
    const outside = Math.max(0, ideal[0] - wait) + Math.max(0, wait - ideal[1])
    const { weights } = scene.problem
    return sum + weights.wait * outside + weights.longWait * Math.max(0, wait - most)
  }, 0)

const keeping = ({ problem }: Scene, breaches: readonly Breach[]): number =>
  breaches.reduce(
    (sum, { kind, by }) => (kind === 'lag' || kind === 'keeps' || kind === 'carry' ? sum + problem.weights.past * by : sum),
    0,
  )

const firstMoment = ({ served }: Scene): number | undefined =>
  served.find(({ serving }) => serving.role.kind !== 'welcome')?.moment

/** From the first serving that is not the welcome to the last one. */
const atTable = (scene: Scene): Span => {
  const from = firstMoment(scene)
  const last = scene.served.at(-1)
  return from === undefined || !last ? { from: 0, to: 0 } : { from, to: last.moment }
}

/** While plates of a serving that is not the welcome are being eaten. */
const atMeals = ({ served }: Scene): Span[] =>
  served
    .filter(({ serving }) => serving.role.kind !== 'welcome')
    .map(({ serving, moment }) => ({ from: moment, to: moment + serving.eating }))

const table = (scene: Scene): number => {
  const { problem } = scene
  const window = atTable(scene)
  const meals = union(atMeals(scene))
  const up = (cook: string) =>
    union(
      cut(
        scene.busy.filter((one) => one.cook === cook && one.of.activity.at !== 'table'),
        window,
      ),
    )
  const away = problem.cooks.filter(({ eats }) => eats).map(({ id }) => up(id))
  const missed = away.map(ticksOf)
  const hosts = problem.cooks.filter(({ host }) => host).map(({ id }) => up(id))
  const { weights } = problem
  return (
    weights.missed * missed.reduce((sum, ticks) => sum + ticks, 0) +
    weights.meal * away.reduce((sum, spans) => sum + ticksOf(common(spans, meals)), 0) +
    weights.unfair * Math.max(0, ...missed) +
    weights.allAway * ticksOf(allAway(scene, hosts)) +
    weights.lead * platingWithoutLead(scene)
  )
}

/** Stretches in which all hosts are up, but for short ones in which a plating activity runs. */
const allAway = ({ placed }: Scene, hosts: readonly (readonly Span[])[]): Span[] => {
  const [first, ...rest] = hosts
  if (!first) return []
  const all = rest.reduce<readonly Span[]>((shared, host) => common(shared, host), first)
  const plating = placed.filter(({ activity }) => activity.plating).map(({ start, end }) => ({ from: start, to: end }))
  return union(all).filter((span) => span.to - span.from > PLATING_BURST || !plating.some((one) => overlaps(one, span)))
}

const platingWithoutLead = ({ problem, placed }: Scene): number =>
  placed.filter(({ activity, placement }) => {
    const delivery = problem.deliveries.find(({ id }) => id === activity.delivery)
    const lead = problem.servings.find(({ id }) => id === delivery?.serving)?.lead
    return activity.plating && lead !== undefined && !placement.cooks.includes(lead)
  }).length

const calm = (scene: Scene): number => {
  const first = firstMoment(scene)
  if (first === undefined) return 0
  const isHandsOn = ({ kind }: Busy) => kind !== 'eye'
  const busyTicks = (cook: string) =>
    ticksOf(
      union(
        cut(
          scene.busy.filter((one) => one.cook === cook && isHandsOn(one)),
          { from: first - CALM_HOUR, to: first },
        ),
      ),
    )
  return scene.problem.weights.calm * scene.problem.cooks.reduce((sum, { id }) => sum + busyTicks(id), 0)
}

/** C20: each stretch in which somebody is at something while they are to be spared. */
const spared = ({ problem, busy }: Scene): number => {
  let sum = 0
  for (const spare of problem.spares ?? [])
    for (const one of busy)
      if (one.cook === spare.cook && (!spare.activities || spare.activities.includes(one.of.activity.id)))
        sum += spare.price * ticksOf(cut([one], spare))
  return sum
}

const fresh = ({ problem, delivered }: Scene): number =>
  delivered
    .flatMap(({ placed, served }) => placed.filter(({ planned }) => planned).map(({ end }) => Math.max(0, served.moment - end)))
    .reduce((sum, early) => sum + (problem.weights.early * early) / 100, 0)

const unchanged = ({ problem, placed }: Scene): number =>
  placed.reduce((sum, { activity, placement, planned }) => {
    const told = problem.previous?.find((previous) => previous.activity === activity.id)
    if (!told || !planned) return sum
    const isSame =
      told.start === placement.start &&
      told.mode === placement.mode &&
      told.cooks.length === placement.cooks.length &&
      told.cooks.every((cook) => placement.cooks.includes(cook))
    return isSame ? sum : sum + problem.weights.moved * (told.frozen ? 10 : 1)
  }, 0)
