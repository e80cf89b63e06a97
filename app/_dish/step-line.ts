import { atText, countOf, listText, sentence } from '#app/_words/clock.ts'
import { heatText } from '#app/_words/heat.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import { batchesOf } from '#lib/quantities/batches.ts'
import type { Scene } from './scene.ts'
import { sharers } from './vessel-words.ts'

/** What a folded step says besides its ways, each a short clause; what nobody has said is left out. */
const moreClauses = (scene: Scene): readonly string[] => {
  const { evening, names, dish, step } = scene
  const [way] = step.ways
  const { earliest, latest, batch, until } = step
  const ready = [until?.sign, until?.coreC === undefined ? undefined : `${heatText(until.coreC, until.coreC)} inside`]
  const shared = sharers(scene)
  const window = [
    earliest ? `can be done from ${atText(evening.date, earliest)}` : undefined,
    latest ? `done by ${atText(evening.date, latest)}` : undefined,
  ]
  return [
    ready.some(Boolean) ? `ready when ${ready.filter(Boolean).join(', ')}` : '',
    window.filter(Boolean).join(', '),
    batch && way
      ? `${batch.portions} at a time, ${countOf(batchesOf(dish ? portionsAt(evening, dish, step.id) : evening.covers, batch, way.takes).count, 'batch', 'batches')}`
      : '',
    shared.length > 0 ? `in the same pan as ${listText(shared.map((one) => `“${names.stepName(one.id)}”`))}` : '',
    ...ovenClauses(scene),
  ].filter(Boolean)
}

/** Which oven it wants, where there are several to choose from. */
const ovenClauses = ({ names, kitchen, step }: Scene): readonly string[] => {
  const ovens = (kitchen?.kit ?? []).filter((kit) => kit.kind === 'oven')
  const wanted = step.ways.flatMap((way) => way.uses.flatMap((use) => (use.kind === 'oven' && use.oven ? [use.oven] : [])))
  return ovens.length < 2 ? [] : [...new Set(wanted)].map((oven) => `in ${names.kitName(oven)}`)
}

/** The same as one line: "Ready when golden; can be done from Thursday 17:00." Empty when there is nothing to say. */
export const moreLine = (scene: Scene): string => {
  const clauses = moreClauses(scene)
  return clauses.length === 0 ? '' : `${sentence(clauses.join('; '))}.`
}
