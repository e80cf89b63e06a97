import { means, type Parts, within, wrong } from '#app/_ui/parts.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Way } from '#lib/domain/menu.ts'
import { batchParts } from './batch-words.ts'
import { belongsParts } from './belongs-words.ts'
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

const MOST_LETTERS = 400

export const doesParts = ({ step }: Scene): Parts<StepEdit> => [
  {
    kind: 'text',
    at: 'does',
    label: 'What is done',
    text: step.does,
    empty: 'What is done, such as: peel the potatoes',
    long: true,
    write: (text) => {
      const does = cleanText(text.trim(), false)
      return does.length > MOST_LETTERS ? wrong(`Say it in at most ${MOST_LETTERS} letters.`) : means(fields({ does }))
    },
  },
]

const putWay = (scene: Scene, index: number) => (way: Way) =>
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
    ...scene.step.ways.map((way, index) => ({
      key: `ways.${index}.more`,
      parts: within(wayMoreParts(way, wayPlace(scene, index)), putWay(scene, index)),
    })),
    { key: 'belongs', parts: belongsParts(scene) },
  ].filter(({ parts }) => parts.length > 0)
