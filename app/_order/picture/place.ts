/** How a place is written: what is drawn stands around its own zero, so that a new order moves it and lays out no letter again. */
export const placed = (x: number, y: number): string => `translate(${x} ${y})`

/** From a zero, without the noise of a subtraction: what only moved stays written as it was. */
export const from = (zero: number, value: number): number => Math.round((value - zero) * 1000) / 1000
