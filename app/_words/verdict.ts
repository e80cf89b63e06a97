import type { Evening } from '#lib/domain/evening.ts'
import type { Guard } from '#lib/domain/menu.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { TableChange } from '#lib/table/table-change.ts'
import type { Trait } from '#lib/table/trait.ts'
import type { Because, Standing, Verdict } from '#lib/table/verdict.ts'
import { countOf, listText, sentence } from './clock.ts'
import { foodWord, rulesWords, splitFood } from './food.ts'
import { guestName } from './guest.ts'
import { namesOf } from './names.ts'
import { rightForText } from './need.ts'
import { shorten } from './shorten.ts'
import { traitWords } from './trait.ts'

export const standingWords: Readonly<Record<Standing, string>> = {
  fits: 'fits',
  'with-change': 'fits with a change',
  'not-confirmed': 'not confirmed: do not serve',
  'does-not': 'does not fit',
}

type Foods = Pick<Evening, 'ingredients'>

/** "butter", at most so many letters. */
const foodName = (evening: Foods, id: string, most = 30): string => {
  const food = evening.ingredients.find((one) => one.id === id)?.food
  return food ? shorten(splitFood(food).food, most) : 'something that is gone'
}

/** "nuts", "what they keep away from": a trait, or the need's own word. */
const traitText = (trait: Trait | null, need: string): string => (trait === null ? foodWord(need) : traitWords[trait])

const lookText = (look: readonly Trait[]): string =>
  look.length === 0 ? '' : ` Look for ${listText(look.map((trait) => traitWords[trait]))}.`

const minutesOf = (minutes: number): string => (minutes === 0 ? 'a moment' : countOf(minutes, 'minute'))

/** Why a plate stands as it does, in a sentence or two. */
export const becauseText = (because: Because, evening: Evening): string => {
  const food = 'ingredient' in because ? sentence(foodName(evening, because.ingredient)) : ''
  switch (because.kind) {
    case 'has': {
      const what = traitText(because.trait, because.need)
      return because.by === 'said' ? `${food}: has ${what}.` : `${food}: has ${what}, going by its name.`
    }
    case 'dislikes':
      return `${food}: has ${traitText(because.trait, because.need)}, which they would rather not have.`
    case 'alcohol-kept':
      return because.percent === 100
        ? `${food}: none of its alcohol is cooked away.`
        : `${food}: about ${because.percent} % of its alcohol is still there after ${minutesOf(because.minutes)} of heat. It is never gone.`
    case 'unknown':
      return `${food}: nobody has looked at what is in it.${lookText(because.look)}`
    case 'label':
      return `${food}: its label has to be read.${lookText(because.look)}`
    case 'silent':
      return `${food}: a label under ${rulesWords[because.rules]} need not name ${traitWords[because.trait]}.`
    case 'hidden':
      return `${food}: it may have ${traitWords[because.trait]}, or not of the right kind, and a label need not say so. Ask whoever made or sold it.`
    case 'name-says':
      return `${food}: it is said to be without ${traitText(because.trait, because.need)}, but its name says otherwise.`
    case 'which':
      return `${food}: it has ${traitWords[because.trait]}, but nobody said of which kind.`
    case 'ask-guest':
      return `${food}: ${traitWords[because.trait]} is for the guest to say.`
    case 'cooked-through':
      return `${food}: fine when it is cooked through, to 74 °C inside, and the method does not say so.`
    case 'beyond':
      return `Ingredients do not tell about ${foodWord(because.need)}: its cook has to say that it was made sure.`
    case 'together':
      return 'Meat and milk at one meal.'
    case 'no-ingredients':
      return 'Nobody has written what is in it.'
    case 'other-kitchen':
      return `It is made in ${namesOf(evening).kitchenName(because.kitchen)}: its cook has to say what is in it and how it was kept apart.`
    case 'changed-since':
      return 'Its cook had made sure, and then something in it was changed.'
    case 'not-asked':
      return 'Nobody knows what they eat.'
  }
}

const SHORT: Readonly<Record<Because['kind'], string>> = {
  has: 'has it',
  dislikes: 'would rather not',
  'alcohol-kept': 'alcohol stays in it',
  unknown: 'look what is in it',
  label: 'read a label',
  silent: 'label does not tell',
  hidden: 'ask the maker',
  'name-says': 'look what is in it',
  which: 'say of which kind',
  'ask-guest': 'ask the guest',
  'cooked-through': 'cook it through',
  beyond: 'ask the cook',
  together: 'meat with milk',
  'no-ingredients': 'write what is in it',
  'other-kitchen': 'ask its cook',
  'changed-since': 'look again',
  'not-asked': 'ask what they eat',
}

/** A verdict in at most about two dozen letters: "oil for butter", "has nuts", "read a label"; nothing where it simply fits. */
export const verdictShort = ({ kind, because, change }: Verdict, evening: Foods): string => {
  const [first] = because
  if (kind === 'with-change') {
    const [swap] = change ?? []
    if (swap?.kind !== 'swap') return 'kept apart'
    return swap.food === ''
      ? `no ${foodName(evening, swap.ingredient, 18)}`
      : `${shorten(swap.food, 12)} for ${foodName(evening, swap.ingredient, 10)}`
  }
  if (first?.kind === 'has') return shorten(`has ${traitText(first.trait, first.need)}`, 24)
  return first === undefined ? '' : SHORT[first.kind]
}

export interface TableChangeWords {
  readonly says: string
  /** The words of its button; null where nothing of the plan is changed by it. */
  readonly todo: string | null
}

type Named = readonly Pick<Guest, 'id' | 'name'>[]

/** Who it is for: "Greta and Ines", "five guests". */
const forText = (ids: readonly string[], guests: Named): string => {
  const names = ids.map((id) => guestName(guests.find((guest) => guest.id === id) ?? { name: '' }))
  return names.length > 3 ? countOf(names.length, 'guest') : listText(names)
}

/** A change that gives guests something, as a sentence and the words of its button. */
export const tableChangeText = (change: TableChange, evening: Evening, guests: Named): TableChangeWords => {
  const names = namesOf(evening)
  const who = forText(change.guests, guests)
  const dish = 'dish' in change ? names.dishName(change.dish) : ''
  const food = 'ingredient' in change ? foodName(evening, change.ingredient) : ''
  switch (change.kind) {
    case 'swap':
      return {
        says:
          change.food === ''
            ? `${dish} without ${food}: then ${who} can have it.`
            : `${sentence(change.food)} in place of ${food} in ${dish}: then ${who} can have it.`,
        todo: change.food === '' ? 'Leave it out' : 'Make it so',
      }
    case 'leave-out':
      return {
        says: `${dish} for ${change.portions} without ${food}, from after “${names.stepName(change.fork)}”: then ${who} can have it, if it is still a dish.`,
        todo: `Make a variant for ${change.portions}`,
      }
    case 'check':
      return { says: `Read what is in ${food} (${dish}), for ${who}.${lookText(change.look)}`, todo: null }
    case 'ask-maker':
      return {
        says: `Ask whoever made or sold ${food} (${dish}) about ${traitWords[change.trait]}, for ${who}: its label need not say.`,
        todo: null,
      }
    case 'ask-guest':
      return { says: `Ask ${who} about ${traitWords[change.trait]}: some mind it and some do not.`, todo: null }
    case 'ask-needs':
      return { says: `Ask ${who} what they eat.`, todo: null }
    case 'ask-cook':
      return {
        says: `Ask who cooks ${dish} whether everything in it, and how it was kept apart, is right for ${listText(change.needs.map(foodWord))}.`,
        todo: null,
      }
    case 'cook-through':
      return { says: `Cook ${food} in ${dish} through, to 74 °C inside, and say so at its step, for ${who}.`, todo: null }
    case 'write-ingredients':
      return { says: `Write what is in ${dish}, for ${who}.`, todo: null }
    case 'guard':
      return {
        says: `${rightForText(dish, change.need)} made first, kept apart and carried by one cook, for ${who}.`,
        todo: 'Put that into the plan',
      }
    case 'add-dish':
      return {
        says: `Nothing in ${names.courseName(change.course)} can be made right for ${who}: add a dish.`,
        todo: 'Add a dish',
      }
  }
}

/** What the guards of a plate are called in the plan: everybody reads it, so no guest is named. */
export const guardWords = (dish: string, need: string): Readonly<Record<Guard['does'], string>> => {
  const plate = rightForText(shorten(dish, 80), need)
  return {
    begin: `Clean start for ${plate}: wash hands, and take a clean board, knife, pan and spoon that nothing else touches`,
    cover: `Cover ${plate}, label it and keep it apart`,
    plate: `Plate ${plate} first, with its own spoon, and cover it again`,
    carry: `Carry ${plate} by itself, to the one it is for`,
  }
}
