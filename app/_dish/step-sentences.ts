import { type Parts, within } from '#app/_ui/parts.ts'
import type { Way } from '#lib/domain/menu.ts'
import { batchParts } from './batch-words.ts'
import { belongsParts } from './belongs-words.ts'
import { guardParts } from './guard-words.ts'
import { lagSentences } from './lag-words.ts'
import { readyParts } from './ready-words.ts'
import type { Scene } from './scene.ts'
import { fields, type StepEdit } from './step-edit.ts'
import { vesselParts } from './vessel-words.ts'
import { wayMoreParts, wayParts, wayPlace } from './way-words.ts'
import { windowParts } from './window-words.ts'

/** One sentence of a step, under a name of its own. */
export interface Said {
  readonly key: string
  readonly parts: Parts<StepEdit>
}

/** A change of one way as a change of its step. */
export const putWay = (scene: Scene, index: number) => (way: Way) =>
  fields({ ways: scene.step.ways.map((other, at) => (at === index ? way : other)) })

/** The ways of doing it, as one changes them most. */
export const waySentences = (scene: Scene): readonly Said[] =>
  scene.step.ways.map((way, index) => ({
    key: `ways.${index}`,
    parts: within(wayParts(way, wayPlace(scene, index)), putWay(scene, index)),
  }))

export const waitSentences = (scene: Scene): readonly Said[] =>
  lagSentences(scene).map((parts, index) => ({ key: `after.${index}`, parts: within(parts, (after) => fields({ after })) }))

/** What is said more rarely. */
export const moreSentences = (scene: Scene): readonly Said[] =>
  [
    { key: 'until', parts: within(readyParts(scene), fields) },
    { key: 'window', parts: within(windowParts(scene), fields) },
    { key: 'batch', parts: within(batchParts(scene), fields) },
    { key: 'vessel', parts: vesselParts(scene) },
    { key: 'guard', parts: within(guardParts(scene), fields) },
    ...scene.step.ways.map((way, index) => ({
      key: `ways.${index}.more`,
      parts: within(wayMoreParts(way, wayPlace(scene, index)), putWay(scene, index)),
    })),
    { key: 'belongs', parts: belongsParts(scene) },
  ].filter(({ parts }) => parts.length > 0)

/** Every sentence of a step but its own words, which are shared letter by letter. */
export const stepSentences = (scene: Scene): readonly Said[] => [
  ...waySentences(scene),
  ...waitSentences(scene),
  ...moreSentences(scene),
]
