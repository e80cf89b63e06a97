import { means, type Parts } from '#app/_ui/parts.ts'
import { listText } from '#app/_words/clock.ts'
import type { Step } from '#lib/domain/menu.ts'
import { type Scene, stepOptions } from './scene.ts'
import type { StepEdit, StepPatch } from './step-edit.ts'

const OWN = ''

const usesRing = (step: Step): boolean => step.ways.some((way) => way.uses.some((use) => use.kind === 'ring'))

/** The other steps in the same pan. */
export const sharers = ({ evening, step }: Scene): readonly Step[] =>
  step.vessel === undefined ? [] : evening.steps.filter((other) => other.id !== step.id && other.vessel === step.vessel)

/** "It is in the same pan as “Soften the onions”": empty for a step that stands on no ring. */
export const vesselParts = (scene: Scene): Parts<StepEdit> => {
  const { step, names, name } = scene
  if (!usesRing(step) && step.vessel === undefined) return []
  const shared = sharers(scene)
  const [first] = shared
  const sharing = scene.evening.steps.filter((one) => one.vessel === step.vessel)
  const others = stepOptions(scene, (other) => usesRing(other) || other.vessel === (step.vessel ?? null))
  return [
    'On the ring it is in ',
    {
      kind: 'choice',
      at: 'vessel',
      label: `${name}: the same pan as another step`,
      value: first?.id ?? OWN,
      options: [
        [OWN, 'a pan of its own'],
        ...others.map(([id, words, group]) => [id, `the same pan as ${words}`, group] as const),
      ],
      choose: (other) => means(other === OWN ? leave(scene) : join(scene, other)),
    },
    '.',
    ...(shared.length === 0
      ? []
      : ([
          {
            kind: 'note',
            at: 'vessel.means',
            tone: 'means',
            words: `The pan keeps its ring from the first to the last of ${listText(sharing.map((one) => `“${names.stepName(one.id)}”`))}.`,
          },
        ] satisfies Parts<StepEdit>)),
  ]
}

/** A pan that only one step is left in is no shared pan any more. */
const leftAlone = (scene: Scene): readonly (readonly [string, StepPatch])[] => {
  const [last, ...more] = sharers(scene)
  return last && more.length === 0 ? [[last.id, { vessel: undefined }]] : []
}

const leave = (scene: Scene): StepEdit => ({
  kind: 'each',
  edits: sharers(scene).length === 0 ? [] : [[scene.step.id, { vessel: undefined }], ...leftAlone(scene)],
})

const join = (scene: Scene, id: string): StepEdit => {
  const { evening, step, newId } = scene
  const other = evening.steps.find((candidate) => candidate.id === id)
  if (!other || (step.vessel !== undefined && other.vessel === step.vessel)) return { kind: 'each', edits: [] }
  const vessel = other.vessel ?? newId()
  return {
    kind: 'each',
    edits: [
      ...leftAlone(scene).filter(([last]) => last !== id),
      [step.id, { vessel }],
      ...(other.vessel === undefined ? [[id, { vessel }] as const] : []),
    ],
  }
}
