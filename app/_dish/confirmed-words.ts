import { type Parts, type Said, wrong } from '#app/_ui/parts.ts'
import { listText } from '#app/_words/clock.ts'
import { foodWord, readWords } from '#app/_words/food.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { madeOf } from '#lib/table/made-of.ts'
import { type DishEdit, meansFields } from './dish-edit.ts'

/** "Its cook has read every label and kept it apart in the kitchen for sesame." What was said of another dish does not hold. */
export const confirmedParts = (dish: Dish, evening: Evening): Parts<DishEdit> => {
  const { confirmed } = dish
  const of = madeOf(evening, dish)
  const say = (words: readonly string[]): Said<DishEdit> =>
    meansFields({ confirmed: words.length === 0 ? undefined : { for: [...words], of } })
  return [
    'Its cook has read every label and kept it apart in the kitchen for ',
    {
      kind: 'text',
      at: 'confirmed',
      label: 'Needs for which its cook has made sure',
      text: listText((confirmed?.for ?? []).map(foodWord)),
      empty: 'nobody yet',
      write: (text) => {
        const words = readWords(text)
        if (words === null) return wrong('Write needs such as nuts, sesame, kosher, with commas.')
        // Written back, it is not said again.
        return confirmed && words.join() === confirmed.for.join() ? meansFields({ confirmed }) : say(words)
      },
    },
    '.',
    ...(confirmed && confirmed.of !== of
      ? ([
          ' Since then something in it was changed, so that does not hold: ',
          {
            kind: 'press',
            at: 'confirmed.again',
            label: 'It was made sure again',
            words: 'it does again, I have looked',
            press: () => say(confirmed.for),
          },
          '.',
        ] satisfies Parts<DishEdit>)
      : []),
  ]
}
