import { type Parts, type Said, type TextBlank, wrong } from '#app/_ui/parts.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { Dish as DishSchema } from '#lib/domain/menu.ts'
import { coversOf } from '#lib/domain/portions.ts'
import type { Patch } from '#lib/plan/commands/set.ts'
import { confirmedParts } from './confirmed-words.ts'
import { type DishEdit, meansFields } from './dish-edit.ts'
import { carryParts, keepsParts, tableParts } from './keeps-words.ts'
import { placeParts, variantParts } from './stands-words.ts'
import type { UseScene } from './use-words.ts'

const numberIn = (text: string, put: (value: number) => Patch<'dishes'>): Said<DishEdit> => {
  const value = readPortions(text)
  return value === null ? wrong('Write a number up to 1000, such as 8 or 2½.') : meansFields(put(value))
}

/** The name of the dish. */
export const nameBlank = (dish: Dish): TextBlank<DishEdit> => ({
  kind: 'text',
  at: 'name',
  label: 'Name of the dish',
  text: dish.name,
  long: true,
  write: (text) => {
    const name = cleanText(text, false).trim()
    if (name === '') return wrong('A dish needs a name.')
    return name.length > 120 ? wrong('A name has at most 120 letters.') : meansFields({ name })
  },
})

/** "It is for everybody, 8; the recipe is for 4." */
const portionsParts = (dish: Dish, covers: number): Parts<DishEdit> => [
  'It is for ',
  {
    kind: 'text',
    at: 'portions',
    label: 'For how many it is made',
    text: dish.portions === undefined ? `everybody, ${covers}` : String(dish.portions),
    write: (text) => {
      if (/^\s*(?:$|every|all)/i.test(text)) return meansFields({ portions: undefined })
      return numberIn(text, (portions) => ({
        portions,
        ...(dish.variant ? { variant: { ...dish.variant, portions } } : {}),
      }))
    },
  },
  '; the recipe is for ',
  {
    kind: 'text',
    at: 'yields',
    label: 'For how many the recipe is written',
    text: String(dish.yields),
    write: (text) => numberIn(text, (yields) => ({ yields })),
  },
  '.',
]

/** "Found at https://…" */
const sourceParts = (dish: Dish): Parts<DishEdit> => [
  'Found at ',
  {
    kind: 'text',
    at: 'source',
    label: 'Web address that it is from',
    text: dish.source ?? '',
    empty: 'no web address',
    write: (text) => {
      const source = text.trim()
      if (source === '') return meansFields({ source: undefined })
      const whole = /^[a-z][a-z0-9+.-]*:/i.test(source) ? source : `https://${source}`
      return DishSchema.shape.source.safeParse(whole).success && /\w\.\w/.test(whole)
        ? meansFields({ source: whole })
        : wrong('Write a web address that begins with https:// or http://.')
    },
  },
  '.',
]

/** All that the page says of a dish beside its method, its ingredients and its notes, under the headings where it stands. */
export const dishSentences = (dish: Dish, evening: Evening, scene: UseScene) => ({
  name: nameBlank(dish),
  portions: portionsParts(dish, coversOf(evening, dish.course)),
  done: [keepsParts(dish, scene), tableParts(dish), carryParts(dish, evening.host)],
  stands: [placeParts(dish, evening), confirmedParts(dish, evening), variantParts(dish, evening)],
  found: [sourceParts(dish)],
})
