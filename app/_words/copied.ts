import type { Cut } from '#lib/plan/settle-dish.ts'
import { sentence } from './clock.ts'

const cutWords: Readonly<Record<Cut, string>> = {
  kitchen: 'it is made in the host’s kitchen here, and carried nowhere',
  oven: 'any oven will do for it',
  waits: 'its steps no longer wait for those of other dishes',
  'stand-in': 'it has no stand-in',
  variant: 'it has only its own part of the method, for it was a variant of another dish',
}

/** "Copied Leek tart. Any oven will do for it." */
export const copiedText = (name: string, cuts: readonly Cut[]): string =>
  [`Copied ${name}.`, ...cuts.map((cut) => `${sentence(cutWords[cut])}.`)].join(' ')
