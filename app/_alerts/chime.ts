/** One tone of a chime: which, when it begins and for how long it sounds, in seconds. */
export interface Tone {
  readonly hz: number
  readonly from: number
  readonly long: number
}

/** Half tones above the lowest tone: each cook's is known by how it goes, not by how high it is. */
const WAYS_TO_GO: readonly (readonly number[])[] = [
  [0, 4, 7],
  [7, 4, 0],
  [0, 7, 0],
  [7, 0, 7],
  [0, 0, 7],
  [7, 7, 0],
  [0, 2, 4, 7],
  [7, 4, 2, 0],
]

/** E5: with what lies above it within the 500 to 2500 Hz in which a signal is heard best over noise (ISO 7731, from memory). */
const LOWEST_HZ = 659.26
const STEP_S = 0.19
const LONG_S = 0.42
/** From the ninth cook on the same ways again, higher. */
const HIGHER = 5

const tones = (way: readonly number[], above: number): readonly Tone[] =>
  way.map((half, at) => ({ hz: LOWEST_HZ * 2 ** ((half + above) / 12), from: at * STEP_S, long: LONG_S }))

/** The chime of the cook who stands at this place in the evening's list. */
export const chimeOf = (place: number): readonly Tone[] =>
  tones(WAYS_TO_GO[place % WAYS_TO_GO.length] ?? [0], HIGHER * Math.floor(place / WAYS_TO_GO.length))

/** For everybody: one long stroke, and its octave. */
export const TABLE_CHIME: readonly Tone[] = [
  { hz: LOWEST_HZ, from: 0, long: 1.2 },
  { hz: LOWEST_HZ * 2, from: 0.06, long: 1 },
]

/** Something must not be served: three times two tones that do not go together. */
export const ALARM: readonly Tone[] = [0, 1, 2].flatMap((time) => [
  { hz: LOWEST_HZ, from: time * 0.5, long: 0.24 },
  { hz: LOWEST_HZ * 2 ** (6 / 12), from: time * 0.5 + 0.24, long: 0.24 },
])

const PAUSE_S = 0.25

/** When the last tone has died away. */
export const lengthOf = (chime: readonly Tone[]): number => Math.max(0, ...chime.map(({ from, long }) => from + long))

/** Several one after another. */
export const inTurn = (chimes: readonly (readonly Tone[])[]): readonly Tone[] => {
  let begin = 0
  return chimes.flatMap((chime) => {
    const from = begin
    begin += lengthOf(chime) + PAUSE_S
    return chime.map((tone) => ({ ...tone, from: tone.from + from }))
  })
}
