/** How fast a cook is against the minutes of the methods; a bigger pace is slower. */
const PACES = [
  [0.6, 'much quicker than most'],
  [0.8, 'quicker than most'],
  [0.9, 'a little quicker than most'],
  [1, 'as the methods say'],
  [1.15, 'a little slower than most'],
  [1.3, 'slower than most'],
  [1.6, 'much slower than most'],
] as const

/** The nearest words for a pace: "a little slower than most". */
export const paceWords = (pace: number): string =>
  PACES.reduce((nearest, each) => (Math.abs(each[0] - pace) < Math.abs(nearest[0] - pace) ? each : nearest))[1]

/** The paces to choose from; the present one is among them, also when it lies between. */
export const paceChoices = (pace: number): readonly (readonly [value: string, words: string])[] => {
  const named = PACES.some(([each]) => each === pace)
  const between = named ? [] : [[pace, `${paceWords(pace)}, ${tenMinutes(pace)}`] as const]
  return [...PACES, ...between].toSorted(([a], [b]) => a - b).map(([each, words]) => [String(each), words] as const)
}

/** What ten minutes of hands-on work take at a pace: "11½ min". */
export const tenMinutes = (pace: number): string => {
  const halves = Math.round(pace * 20)
  return `${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''} min`
}

const SLOWEST = 1.6
const QUICKEST = 0.6

/** Reads what ten minutes of work take this cook, as a pace: "11½ min", "12". Null below 6 and above 16 minutes. */
export const readTenMinutes = (text: string): number | null => {
  const found = /^\s*(\d{1,2})(?:([.,]\d)|\s*(½))?\s*(?:m|min|mins|minutes?)?\s*$/i.exec(text)
  if (!found) return null
  const pace = Number(`${found[1]}${found[3] ? '.5' : (found[2]?.replace(',', '.') ?? '')}`) / 10
  return pace >= QUICKEST && pace <= SLOWEST ? pace : null
}
