/** Over everything while an evening is rehearsed. */
export const REHEARSAL = 'Rehearsal: nothing of this is told to the others.'

/** "10 minutes in one": how fast the clock goes. */
export const speedText = (speed: number): string =>
  speed === 1 ? 'As slow as life' : speed < 60 ? `${speed} times as fast` : `${speed / 60} min a second`

/** On a button as wide as a thumb. */
export const speedShort = (speed: number): string => `${speed}×`
