import { countText } from './clock.ts'

/** Where something is after it was moved: "Carrot soup is now second of three in Starter." */
export const movedText = (name: string, at: number, count: number, into?: string): string =>
  `${name} is now ${ordinal(at)} of ${countText(count)}${into === undefined ? '' : ` in ${into}`}.`

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']
const ordinal = (at: number): string => ORDINALS[at] ?? `number ${at + 1}`
