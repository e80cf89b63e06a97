import type { Measures } from '#lib/domain/unit-words.ts'
import type { UnusedLine } from '#lib/recipes/draft.ts'
import type { Assumed } from '#lib/recipes/make-dish.ts'
import type { DecimalMark, Doubt } from '#lib/recipes/preview.ts'
import type { Unread } from '#lib/recipes/read.ts'
import { durationText } from './duration.ts'

/** What is not understood of a line, about the words in question. */
export const doubtWords: Readonly<Record<Doubt['kind'], (words: string) => string>> = {
  number: (words) => `“${words}” is a number that nothing explains.`,
  decimal: (words) => `“${words}” is written with another decimal mark than the rest.`,
  'no-amount': () => 'No amount is given.',
  alternative: () => 'It says one thing or another: only the first is taken.',
  sum: (words) => `“${words}” cannot be added to the amount before it.`,
  sentence: () => 'This reads like a step rather than an ingredient.',
  'too-long': () => 'The line is longer than is read.',
  vague: (words) => `“${words}” is not said plainly: what was made of it is a guess.`,
}

/** What was assumed where the recipe says nothing. `likely` is what stands there now. */
export const assumedWords: Readonly<Record<Assumed['kind'], (likely: string) => string>> = {
  'no-minutes': (likely) => `Nobody said how long: ${durationText(likely)} is assumed.`,
  'by-weight': (likely) => `It takes so long for each pound or kilo: ${durationText(likely)} is assumed until you weigh it.`,
  'no-heat': () => 'Nobody said how hot: 180° is assumed.',
  'no-end': () => 'Nobody said how long at most: what stands here is assumed.',
  batches: () => 'It is done in batches, and nobody said how many fit: one is assumed.',
  vague: (likely) => `The time was said loosely: ${durationText(likely)} is assumed.`,
  'no-recipe': () => 'There is no recipe: this is assumed from the dish’s name alone.',
  'no-yield': () => 'Nobody said for how many it is: for all of you is assumed.',
  'yield-range': () => 'It is for a range of people: the fewer is taken, so that nobody goes hungry.',
  'plate-added': () => 'Putting it on the plates is added as a last step: 4 min.',
  'cut-short': () => 'It has more lines than a dish can hold: the rest is not used.',
  hot: () => 'What comes from the heat is taken to go on within 15 min, to the next step and to the plates.',
  'into-cold': () => 'What was heated is taken to be in the fridge within 2 h, for safety: the order keeps to that.',
  keeps: () => 'How long it may wait for the table is assumed from its last step.',
}

export const unusedWords: Readonly<Record<UnusedLine['why'], string>> = {
  'left-over': 'neither an ingredient nor a step',
  heating: 'no step of its own: the oven is hot when something goes in',
  'set-aside': 'set aside by you',
}

export const measuresWords: Readonly<Record<Measures, string>> = {
  us: 'American',
  uk: 'British',
  au: 'Australian',
  metric: 'metric',
}

export const decimalWords: Readonly<Record<DecimalMark, string>> = { '.': '1.5', ',': '1,5' }

/** Why a text was not read, and what to do. */
export const unreadText = (unread: Unread): string => {
  switch (unread.kind) {
    case 'too-long':
      return `This is longer than the ${unread.most.toLocaleString('en-GB')} letters that are read. Take the recipe alone.`
    case 'too-deep':
      return 'This page is built too strangely to be read. Copy the recipe’s words and paste them.'
    case 'nothing':
      return 'No menu and no recipe was found in this. A menu is a line for each course; a recipe has a list of what it needs, then what is done.'
  }
}
