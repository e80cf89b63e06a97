import { type SourceKey, TABLE_SOURCES } from '#lib/table/source.ts'
import type { Trait } from '#lib/table/trait.ts'
import { allergenWords } from './food.ts'

/** What a trait is called in the middle of a sentence. */
export const traitWords: Readonly<Record<Trait, string>> = {
  ...allergenWords,
  rye: 'rye',
  barley: 'barley',
  oats: 'oats',
  buckwheat: 'buckwheat',
  almond: 'almond',
  'brazil-nut': 'Brazil nut',
  cashew: 'cashew',
  hazelnut: 'hazelnut',
  macadamia: 'macadamia',
  pecan: 'pecan',
  pistachio: 'pistachio',
  walnut: 'walnut',
  'pine-nut': 'pine nut',
  coconut: 'coconut',
  chestnut: 'chestnut',
  meat: 'meat',
  poultry: 'poultry',
  pork: 'pork',
  game: 'game',
  lard: 'lard',
  gelatine: 'gelatine',
  rennet: 'animal rennet',
  carmine: 'carmine',
  isinglass: 'fining of fish or animals',
  honey: 'honey',
  alcohol: 'alcohol',
  'little-lactose': 'a little lactose',
  'raw-egg': 'raw egg',
  'raw-meat': 'raw meat',
  'raw-fish': 'raw fish or shellfish',
  'cured-meat': 'cured meat',
  'cured-fish': 'smoked or cured fish',
  unpasteurised: 'unpasteurised milk',
  'mould-cheese': 'soft cheese with mould',
  liver: 'liver',
  pate: 'pâté',
  sprouts: 'raw sprouts',
  'predator-fish': 'shark, swordfish or marlin',
  'lead-shot': 'lead shot',
}

/** "Regulation (EU) No 1169/2011, Annex II"; "common practice, no source". */
export const tableSourceText = (key: SourceKey): string => {
  const { publisher, title, edition, standing } = TABLE_SOURCES[key]
  if (standing === 'practice') return 'common practice, no source'
  if (standing === 'memory' && edition === '') return 'well known, not looked up'
  const how = standing === 'quoted' ? ', as quoted by others' : standing === 'memory' ? ', not looked up' : ''
  return `${publisher}, ${title}${edition === '' ? '' : `, ${edition}`}${how}`
}
