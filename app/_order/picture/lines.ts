import type { Shape } from './columns.ts'

/** How near the drawing is looked at. */
export type Zoom = 'evening' | 'hour' | 'ten'

/** Sizes of a label line, in pixels. `pitch`: between two lines of one column; `clock`: room for the clock. */
export interface Line {
  readonly size: number
  readonly clock: number
  readonly left: number
  readonly mark: number
  readonly pitch: number
  /** Height of one line of text, how many there may be, and the step from one to the next. */
  readonly text: number
  readonly lines: 1 | 2
  readonly lead: number
  /** Kept free between a line and a course's plates. */
  readonly clear: number
}

const PHONE: Line = { size: 15, clock: 46, left: 36, mark: 20, pitch: 44, text: 16, lines: 2, lead: 17, clear: 14 }

/** On a phone two lines are a finger apart; near by, times can be read at arm's length. */
export const LINES: Readonly<Record<Shape, Readonly<Record<Zoom, Line>>>> = {
  wide: {
    evening: { size: 13, clock: 41, left: 31, mark: 18, pitch: 16.5, text: 13.5, lines: 1, lead: 0, clear: 12 },
    hour: { size: 15, clock: 44, left: 34, mark: 19, pitch: 40, text: 16, lines: 2, lead: 18, clear: 12 },
    ten: { size: 18, clock: 54, left: 36, mark: 20, pitch: 48, text: 19, lines: 2, lead: 22, clear: 13 },
  },
  phone: {
    evening: PHONE,
    hour: { ...PHONE, size: 16, clock: 49 },
    ten: { ...PHONE, size: 18, clock: 54, pitch: 48, text: 19, lead: 22 },
  },
}
