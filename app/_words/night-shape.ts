import type { Shape } from '#app/_tonight/device.ts'

/** What a device is tonight, as it stands after "This device is". */
export const shapeWords: Readonly<Record<Shape, string>> = {
  worktop: 'on the worktop, for everybody',
  mine: 'in the hand',
  table: 'beside the plate, silent,',
}
