import { secondsOf } from './duration.ts'
import type { Step } from './menu.ts'

/** It begins by itself once what it waits for is done: left alone from its first moment, nobody puts it in or on anything. */
export const needsNobody = ({ after, batch, ways }: Step): boolean =>
  batch === undefined &&
  after.every(({ from, least }) => from === 'end' && secondsOf(least) === 0) &&
  ways.every(
    ({ care, touches, uses }) =>
      care === 'leave' && touches.every(({ when }) => when !== 'in') && uses.every(({ kind }) => kind === 'worktop'),
  )
