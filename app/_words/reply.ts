import type { AnswerRefusal } from '#server/guests/answer.ts'
import { minutesText } from './duration.ts'

/** The words to choose from in one's own sentence, and in that about somebody else. */
export const REPLY_CHOICES = {
  self: [
    ['', 'say whether I come'],
    ['yes', 'I’ll be there'],
    ['no', 'I cannot come'],
    ['maybe', 'I may come'],
  ],
  other: [
    ['', 'has not said'],
    ['yes', 'comes too'],
    ['no', 'does not come'],
    ['maybe', 'may come'],
  ],
} as const

export const EATS_CHOICES = [
  ['', 'say what'],
  ['all', 'everything'],
  ['but', 'everything but'],
] as const

export const PLATE_CHOICES = [
  ['adult', 'a whole plate'],
  ['small', 'a small plate'],
  ['large', 'a large plate'],
  ['child', 'a child’s plate'],
  ['child-full', 'a whole plate, for a child'],
] as const

export const DRINKS_CHOICES = [
  ['unknown', 'say what'],
  ['alcohol', 'alcohol too'],
  ['none', 'no alcohol'],
] as const

export const DRIVES_CHOICES = {
  self: [
    ['no', 'don’t drive'],
    ['yes', 'drive'],
  ],
  other: [
    ['no', 'do not drive'],
    ['yes', 'drive'],
  ],
} as const

/** Why an answer was not stored, but for what is wrong with a field. */
export const answerRefusedText = (refusal: Exclude<AnswerRefusal, { kind: 'unknown' }>): string => {
  switch (refusal.kind) {
    case 'too-many-tries':
      return tooManyTriesText(refusal.seconds)
    case 'closed':
      return 'Answers can no longer be changed here. Please tell your hosts yourself.'
    case 'no-consent':
      return 'Tick that they may keep what you eat and what you wrote, or leave both out.'
    case 'too-many-people':
      return `This link is for ${refusal.places} at most. Ask your hosts before you bring more.`
    case 'changed-meanwhile':
      return 'Somebody changed this answer after you opened it: another phone with this link, or your hosts. What you wrote stands below. Send it again to put it in the place of theirs, or load the page to see theirs first.'
    case 'invalid':
      return 'Something in it could not be read. Load the page again, then write it once more.'
  }
}

export const tooManyTriesText = (seconds: number): string =>
  `Too many links that open nothing were tried from here. Wait ${minutesText(Math.max(1, Math.ceil(seconds / 60)))}, then try again.`
