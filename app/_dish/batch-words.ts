import { means, type Parts, wrong } from '#app/_ui/parts.ts'
import { batchText } from '#app/_words/batch.ts'
import { readAmount } from '#app/_words/read-count.ts'
import type { Step } from '#lib/domain/menu.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import type { Scene } from './scene.ts'
import type { StepPatch } from './step-edit.ts'

const MOST_TOGETHER = 20
const SHOWN_TOGETHER = 4

/** "6 fit the pan, one after the other": more people, more batches, more time. */
export const batchParts = (scene: Scene): Parts<StepPatch> => {
  const { step, name } = scene
  const { batch } = step
  return [
    {
      kind: 'text',
      at: 'batch.portions',
      label: `${name}: how many fit at once`,
      text: batch === undefined ? '' : String(batch.portions),
      empty: 'All of them',
      write: (text) => {
        if (/^(?:all.*)?$/i.test(text.trim())) return means({ batch: undefined })
        const portions = readAmount(text)
        return portions === null || portions > 1000
          ? wrong('Write for how many the pan or tray is big enough, such as 6. Leave it empty if all fit.')
          : means({ batch: { portions, together: batch?.together ?? 1 } })
      },
    },
    ' fit the pan or the tray at once',
    ...(batch === undefined ? ['.'] : togetherParts(scene, batch)),
  ]
}

const togetherParts = (scene: Scene, batch: NonNullable<Step['batch']>): Parts<StepPatch> => {
  const { name } = scene
  const counts = [...new Set([...Array.from({ length: SHOWN_TOGETHER }, (_, at) => at + 1), batch.together])]
  return [
    '; ',
    {
      kind: 'choice',
      at: 'batch.together',
      label: `${name}: batches side by side`,
      value: String(batch.together),
      options: counts
        .filter((count) => count <= MOST_TOGETHER)
        .map((count) => [String(count), count === 1 ? 'one after the other' : `${count} batches side by side`] as const),
      choose: (together) => means({ batch: { ...batch, together: Number(together) } }),
    },
    '.',
    ...batchNotes(scene, batch),
  ]
}

/** What it comes to for those who are to be fed. */
const batchNotes = ({ evening, dish, step }: Scene, batch: NonNullable<Step['batch']>): Parts<never> => {
  const [way] = step.ways
  const portions = dish ? portionsAt(evening, dish, step.id) : evening.covers
  return way ? [{ kind: 'note', at: 'batch.means', tone: 'means', words: batchText(portions, batch, way.takes) }] : []
}
