import { means, type Parts, wrong } from '#app/_ui/parts.ts'
import { foodWord, readWords } from '#app/_words/food.ts'
import type { Guard } from '#lib/domain/menu.ts'
import type { Scene } from './scene.ts'
import type { StepPatch } from './step-edit.ts'

const doesWords: Readonly<Record<Guard['does'], string>> = {
  begin: 'the clean start',
  cover: 'the cover',
  plate: 'the plating, before the others',
  carry: 'the way to the table',
}

/** "For a severe allergy to nuts it is the clean start." */
export const guardParts = ({ step, name }: Scene): Parts<StepPatch> => {
  const { guard } = step
  return [
    'It takes care of ',
    {
      kind: 'text',
      at: 'guard.for',
      label: `${name}: the severe allergy it takes care of`,
      text: guard ? foodWord(guard.for) : '',
      empty: 'no severe allergy',
      write: (text) => {
        const words = readWords(text)
        const [word] = words ?? []
        if (words?.length === 0) return means({ guard: undefined })
        if (words?.length !== 1 || word === undefined) return wrong('Write one allergy, such as nuts.')
        return means({ guard: { for: word, does: guard?.does ?? 'begin' } })
      },
    },
    ...(guard
      ? ([
          ': it is ',
          {
            kind: 'choice',
            at: 'guard.does',
            label: `${name}: what it does for the allergy`,
            value: guard.does,
            options: Object.entries<string>(doesWords),
            choose: (does) => means({ guard: { ...guard, does: does as Guard['does'] } }),
          },
        ] satisfies Parts<StepPatch>)
      : []),
    '.',
  ]
}
