import { type UnitOfMeasureDefinitions, unitsOfMeasure } from 'parse-ingredient'
import { nameUnit } from '#lib/domain/unit-words.ts'

const extra = (plural: string, ...alternates: string[]) => ({ short: plural, plural, alternates, type: 'other' as const })

/** What parse-ingredient's own table lacks of the words that count or guess. */
export const COUNT_UNITS: UnitOfMeasureDefinitions = {
  tin: extra('tins'),
  packet: extra('packets'),
  big: extra('big'),
  knob: extra('knobs'),
  handful: extra('handfuls'),
  splash: extra('splashes'),
  glug: extra('glugs'),
  drizzle: extra('drizzles'),
  sachet: extra('sachets'),
  rasher: extra('rashers'),
  punnet: extra('punnets'),
  tub: extra('tubs'),
  block: extra('blocks'),
  ball: extra('balls'),
  pot: extra('pots'),
  stalk: extra('stalks'),
  sprig: extra('sprigs'),
  jar: extra('jars'),
  bottle: extra('bottles'),
  can: extra('cans'),
  slice: extra('slices'),
  squeeze: extra('squeezes'),
  thumb: extra('thumbs'),
  grind: extra('grinds'),
  grating: extra('gratings'),
  loaf: extra('loaves'),
  dollop: extra('dollops'),
  scoop: extra('scoops'),
  dessertspoon: extra('dessertspoons', 'dsp', 'dessertspoonful'),
  glass: extra('glasses', 'glassful'),
  wineglass: extra('wineglasses', 'wineglassful'),
  mug: extra('mugs'),
  pouch: extra('pouches'),
  tube: extra('tubes'),
  bulb: extra('bulbs'),
}

// Its pinch and dash are volumes there; here nobody weighs them. A dozen is a number.
const NAMES = new Map(
  Object.entries({ ...unitsOfMeasure, ...COUNT_UNITS }).flatMap(([id, unit]) =>
    nameUnit(id) !== null || unit.type === 'length' || id === 'dozen'
      ? []
      : [id, unit.plural, unit.short, ...(unit.alternates ?? [])].map((name) => [name.toLowerCase(), id] as const),
  ),
)

/** The one form of a word that counts ("cloves" → "clove"); null when it is none. */
export const countUnit = (word: string): string | null => NAMES.get(word.toLowerCase().replace(/\.$/, '')) ?? null

const PLURALS = new Map(Object.entries({ ...unitsOfMeasure, ...COUNT_UNITS }).map(([id, unit]) => [id, unit.plural]))

/** The form for several of a word that counts, with its size before it ("small bunch" → "small bunches"); any other word as it is. */
export const countPlural = (unit: string): string => {
  const words = unit.split(' ')
  const last = words.pop() ?? ''
  const plural = countUnit(last) === last ? PLURALS.get(last) : undefined
  return plural === undefined ? unit : [...words, plural].join(' ')
}
