import { msOfInstant } from '#lib/domain/time.ts'
import { coolsInTime } from './cool.ts'
import { donenessOf, FOODSAFETY_GOV } from './doneness.ts'
import type { Finding, Stage, Weight } from './finding.ts'
import { fixesOf } from './fixes.ts'
import { isEgg, isFrozen, isShellfish } from './foods.ts'
import { lineOf } from './line.ts'
import { ALSO_SAID, alsoSaid, COOLING, type Limit, REHEATING, SOURCES } from './rules.ts'
import { atTable, coldLimit, isUnsure, type Scene } from './scene.ts'
import { minutesBetween, minutesOf, type Out, placeOf } from './walk.ts'

/** One rule over one dish. */
type Check = (scene: Scene) => readonly Finding[]

const base = (
  scene: Scene,
  weight: Weight,
  step: string | null,
  from: number | null,
  to: number | null,
  limit: Pick<Limit, 'source'>,
) => ({
  weight,
  dish: scene.dish.id,
  step,
  from,
  to,
  source: limit.source,
})

const tooLong = (scene: Scene, stage: Stage, out: Out, to: number, step: string | null, limit: Limit): readonly Finding[] => {
  const minutes = minutesBetween(out.since, to)
  if (minutes <= limit.value) return []
  const fixes = fixesOf(scene.evening, scene.dish, stage, out, step, limit.value)
  return [
    {
      ...base(scene, 'beyond', step ?? out.after, out.since, to, limit),
      kind: 'out',
      stage,
      minutes,
      most: limit.value,
      unsure: isUnsure(scene),
      fixes,
    },
  ]
}

/** Out for too long before it is heated, before it is cold, or on its way to the table. */
const outTooLong: Check = (scene) => {
  const { walked, toTable } = scene
  const steps = walked.flatMap(({ timed, before }): readonly Finding[] => {
    if (before.out === null || timed.place === 'room') return []
    const limit = timed.place === 'heat' || before.cookedAt === null ? scene.out : coldLimit(scene, before)
    return tooLong(scene, timed.place === 'heat' ? 'before-heat' : 'before-fridge', before.out, timed.start, timed.step.id, limit)
  })
  const out = atTable(scene)
  // What was out for too long before a step is so at the table: it is said once.
  if (out === null || toTable === null || steps.some(({ from }) => from === out.since)) return steps
  return [...steps, ...tooLong(scene, 'to-table', out, toTable, null, scene.out)]
}

/** Where times add up: four hours in all since it was cooked, whatever was in between. */
const outInAll: Check = (scene) => {
  const { toTable, walked, evening } = scene
  const applies = evening.rules === 'strictest' || evening.rules === 'eu' || alsoSaid(evening.rules).includes('fsanz-four-hours')
  const out = atTable(scene)
  if (!applies || out === null || toTable === null) return []
  const before = Math.max(0, ...walked.filter(({ isLast }) => isLast).map(({ after }) => after.beforeMs))
  const minutes = before / 60_000 + minutesBetween(out.since, toTable)
  const limit = ALSO_SAID['fsanz-four-hours']
  return before > 0 && minutes >= limit.minutes
    ? [{ ...base(scene, 'beyond', out.after, null, toTable, limit), kind: 'out-in-all', minutes, most: limit.minutes }]
    : []
}

/** Cooked food that goes into the fridge: in boxes, not in its pot. */
const cooling: Check = (scene) =>
  scene.walked.flatMap(({ timed, before }): readonly Finding[] => {
    if (timed.place === 'heat' || timed.place === 'room' || before.cookedAt === null || before.chilled || before.out === null)
      return []
    const limit = coldLimit(scene, before)
    return [
      {
        ...base(scene, 'do', timed.step.id, before.out.since, timed.start, COOLING),
        kind: 'cool',
        minutes: minutesBetween(before.out.since, timed.start),
        most: limit.value,
        box: coolsInTime('shallow box'),
        pot: coolsInTime('pot'),
      },
    ]
  })

/** Cooked, kept in the cold, and eaten too many days later. */
const keptLong: Check = (scene) => {
  const { walked, rules, toTable } = scene
  const kept = walked.filter(({ isLast, after }) => isLast && after.cookedAt !== null && (after.chilled || after.reheats > 0))
  return kept.flatMap(({ timed, after }): readonly Finding[] => {
    const rice = after.sorts.includes('rice')
    const limit = rice ? rules.riceKeeps : rules.keeps
    if (after.cookedAt === null || toTable === null) return []
    const minutes = minutesBetween(after.cookedAt, toTable)
    return minutes > limit.value
      ? [
          {
            ...base(scene, 'beyond', timed.step.id, after.cookedAt, toTable, limit),
            kind: 'kept-long',
            minutes,
            most: limit.value,
            rice,
          },
        ]
      : []
  })
}

/** Heated again from the cold: hot throughout, and once. */
const reheating: Check = (scene) =>
  scene.walked.flatMap(({ timed, before, isReheat }): readonly Finding[] => {
    if (!isReheat) return []
    const { reheatC } = scene.rules
    const about = base(scene, 'do', timed.step.id, timed.begins, timed.end, reheatC)
    return before.reheats > 0
      ? [{ ...about, weight: 'beyond', source: SOURCES.reheatOnce, kind: 'reheat-again' }]
      : [{ ...about, kind: 'reheat', coreC: reheatC.value, within: REHEATING.minutes }]
  })

/** Kept hot for the table: an oven that is cooler than the limit keeps nothing hot. */
const keepingHot: Check = (scene) => {
  const { dish, order, rules } = scene
  const kept = order.keeping.find((keeping) => keeping.dish === dish.id && keeping.kit.length > 0)
  if (!kept || dish.keeps.how !== 'hot') return []
  const about = base(scene, 'do', null, msOfInstant(kept.from), msOfInstant(kept.to), rules.hotC)
  const hotC = rules.hotC.value
  const cool = dish.keeps.uses.find((use) => use.kind === 'oven' && use.lowC < hotC)
  return cool?.kind === 'oven'
    ? [{ ...about, weight: 'beyond', kind: 'keep-too-cool', ovenC: cool.lowC, hotC }]
    : [{ ...about, kind: 'keep-hot', hotC }]
}

/** A step that stops at less than is published for what is in it. */
const coreTooLow: Check = (scene) =>
  scene.walked.flatMap(({ timed }): readonly Finding[] => {
    const done = donenessOf(scene.evening, timed.step.id)
    if (!done?.low || done.coreC === null) return []
    return [
      {
        ...base(scene, 'beyond', timed.step.id, timed.begins, timed.end, { source: FOODSAFETY_GOV }),
        kind: 'core-low',
        coreC: done.coreC,
        leastC: done.low.atLeastC,
        food: done.low.words,
      },
    ]
  })

/** Egg that no heat follows; of one that is in no step, when nothing of the dish is heated. */
const rawEgg: Check = (scene) => {
  const heats = scene.walked.filter(({ timed }) => timed.place === 'heat').map(({ timed }) => lineOf(scene.evening, timed.step))
  const raw = scene.evening.ingredients.filter(
    (ingredient) =>
      ingredient.dish === scene.dish.id &&
      isEgg(ingredient) &&
      !heats.some((line) => ingredient.step === undefined || line.has(ingredient.step)),
  )
  const [egg] = raw
  if (!egg) return []
  const by = scene.evening.rules === 'uk' ? ('lion' as const) : ('pasteurised' as const)
  const source = by === 'lion' ? SOURCES.rawEggUk : SOURCES.rawEggUs
  return [{ ...base(scene, 'do', egg.step ?? null, null, null, { source }), kind: 'raw-egg', by }]
}

/** Live shellfish: bought on the day, tapped, and what stays shut is left. */
const shellfish: Check = (scene) =>
  scene.evening.ingredients
    .filter((ingredient) => ingredient.dish === scene.dish.id && isShellfish(ingredient))
    .map(
      ({ food, step }): Finding => ({
        ...base(scene, 'do', step ?? null, null, null, { source: SOURCES.shellfish }),
        kind: 'shellfish',
        food,
      }),
    )

const THAW = /\b(?:thaw|defrost)/i

/** What is frozen thaws in the fridge, or in cold water and is cooked at once. */
const thawing: Check = (scene) => {
  const steps = scene.walked.filter(({ timed }) => THAW.test(timed.step.does))
  const about = (step: string | null) => base(scene, 'do', step, null, null, { source: SOURCES.thaw })
  if (steps.length > 0)
    return steps.map(({ timed }): Finding => {
      const inFridge = placeOf(timed.way) === 'cold'
      const isLong = minutesOf(timed.way.takes.likely) > scene.out.value
      return { ...about(timed.step.id), weight: inFridge || !isLong ? 'do' : 'beyond', kind: 'thaw', inFridge }
    })
  const frozen = scene.evening.ingredients.some((ingredient) => ingredient.dish === scene.dish.id && isFrozen(ingredient))
  return frozen ? [{ ...about(null), kind: 'thaw', inFridge: false }] : []
}

/** The rules, each on its own. */
export const CHECKS: readonly Check[] = [
  outTooLong,
  outInAll,
  cooling,
  keptLong,
  reheating,
  keepingHot,
  coreTooLow,
  rawEgg,
  shellfish,
  thawing,
]
