import { means, type Parts } from '#app/_ui/parts.ts'
import { wayText } from '#app/_words/way.ts'
import { partsOf } from '#lib/recipes/parts.ts'
import { readStep } from '#lib/recipes/step.ts'
import { wayOf } from '#lib/recipes/way.ts'
import type { Scene } from './scene.ts'
import { fields, type StepEdit } from './step-edit.ts'
import { isBlank } from './step-presets.ts'

/** "Roast 45 min at 200°C": what the words of a step say of its length, kit and heat, to be taken over in one tap. */
export const toldParts = (scene: Scene): Parts<StepEdit> => {
  const { step, name } = scene
  if (!isBlank(scene)) return []
  const [part, ...more] = partsOf(readStep(step.does, null, '.'), '.')
  // Words of several things, or without a sure length, are better said one by one.
  if (!part || more.length > 0 || !part.time?.certain) return []
  const { way } = wayOf(part, null)
  return [
    {
      kind: 'press',
      at: 'told',
      label: `${name}: as the words say. ${wayText(way)}`,
      words: `As the words say: ${wayText(way).replace(/\.$/, '')}`,
      press: () => means(fields({ ways: [way] })),
    },
  ]
}
