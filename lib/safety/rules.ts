import type { Rules } from '#lib/domain/ingredient.ts'
import type { Source } from '#lib/domain/source.ts'

const source = (publisher: string, title: string, year: number | null, standing: Source['standing'], ref?: string): Source => ({
  publisher,
  title,
  year,
  standing,
  ...(ref === undefined ? {} : { ref }),
})
const foodCode = (ref: string, standing: Source['standing'] = 'read'): Source =>
  source('FDA', 'Food Code, 10th edition', 2022, standing, ref)

const USDA_DANGER = source('USDA FSIS', 'Danger Zone (40 °F–140 °F)', null, 'quoted')
const USDA_LEFTOVERS = source('USDA FSIS', 'Leftovers and Food Safety', null, 'quoted')
const FSS_CHILLING = source('Food Standards Scotland', 'Chilling', null, 'read')
const FSA_RICE = source('FSA', 'advice on cooked rice', null, 'quoted')
const SFBB_70 = source('FSA', 'Safer Food Better Business: 70 °C for two minutes; steaming hot throughout', null, 'quoted')
const UK_HYGIENE = (ref: string) => source('UK', 'Food Hygiene Regulations, Schedule 4', 2006, 'read', ref)
const FSANZ = source('FSANZ', '2-hour / 4-hour rule', null, 'quoted')

/** A figure of a rule with where it stands. */
export interface Limit {
  readonly value: number
  readonly source: Source
}

/** What food must keep to under one set of rules. Temperatures in °C as printed, times in minutes. */
export interface SafetyRules {
  /** Between these food is in danger: neither cold nor hot. */
  readonly coldC: Limit
  readonly hotC: Limit
  /** Out of the fridge or off the heat, once; and where it is hotter than 32 °C. */
  readonly out: Limit
  readonly outHot: Limit
  /** Cooked food into the fridge. */
  readonly intoFridge: Limit
  readonly riceIntoFridge: Limit
  /** Cooked food in the fridge until it is eaten. */
  readonly keeps: Limit
  readonly riceKeeps: Limit
  /** Inside, when it is heated again; steaming hot throughout is said besides. */
  readonly reheatC: Limit
}

const HOUR = 60
const DAY = 24 * HOUR

const OUT: Limit = { value: 2 * HOUR, source: USDA_DANGER }
const OUT_HOT: Limit = { value: HOUR, source: USDA_DANGER }
const REHEAT: Limit = { value: 74, source: USDA_LEFTOVERS }
const RICE_IN: Limit = { value: HOUR, source: FSA_RICE }
const RICE_DAY: Limit = { value: DAY, source: FSA_RICE }

const US: SafetyRules = {
  coldC: { value: 4, source: USDA_DANGER },
  hotC: { value: 60, source: USDA_DANGER },
  out: OUT,
  outHot: OUT_HOT,
  intoFridge: { value: 2 * HOUR, source: USDA_LEFTOVERS },
  riceIntoFridge: { value: 2 * HOUR, source: USDA_LEFTOVERS },
  keeps: { value: 3 * DAY, source: USDA_LEFTOVERS },
  riceKeeps: { value: 3 * DAY, source: USDA_LEFTOVERS },
  reheatC: REHEAT,
}
const UK: SafetyRules = {
  coldC: { value: 5, source: source('Food Standards Scotland', 'Chilling: a fridge at home, 0–5 °C', null, 'read') },
  hotC: { value: 63, source: UK_HYGIENE('para 6: hot holding by businesses') },
  out: OUT,
  outHot: OUT_HOT,
  intoFridge: {
    value: 2 * HOUR,
    source: source('FSA', 'advice on cooling: into the fridge within one to two hours', null, 'quoted'),
  },
  riceIntoFridge: RICE_IN,
  keeps: { value: 2 * DAY, source: FSS_CHILLING },
  riceKeeps: RICE_DAY,
  reheatC: { value: 70, source: SFBB_70 },
}
/** Where FSANZ is not cited its figures are those of the UK and the US. */
const AU: SafetyRules = {
  ...UK,
  reheatC: REHEAT,
  coldC: { value: 5, source: FSANZ },
  hotC: { value: 60, source: FSANZ },
  intoFridge: { value: 2 * HOUR, source: FSANZ },
}

const lower = (a: Limit, b: Limit): Limit => (b.value < a.value ? b : a)
const higher = (a: Limit, b: Limit): Limit => (b.value > a.value ? b : a)

/** Of each figure the one that allows less. */
const stricter = (a: SafetyRules, b: SafetyRules): SafetyRules => ({
  coldC: lower(a.coldC, b.coldC),
  hotC: higher(a.hotC, b.hotC),
  out: lower(a.out, b.out),
  outHot: lower(a.outHot, b.outHot),
  intoFridge: lower(a.intoFridge, b.intoFridge),
  riceIntoFridge: lower(a.riceIntoFridge, b.riceIntoFridge),
  keeps: lower(a.keeps, b.keeps),
  riceKeeps: lower(a.riceKeeps, b.riceKeeps),
  reheatC: higher(a.reheatC, b.reheatC),
})
const STRICTEST = [UK, AU].reduce(stricter, US)

/** The EU has no such figures of its own for homes, so there the strictest of the others count. */
const PROFILES: Readonly<Record<Rules, SafetyRules>> = { us: US, uk: UK, au: AU, eu: STRICTEST, strictest: STRICTEST }

export const safetyRules = (rules: Rules): SafetyRules => PROFILES[rules]

/** Cooling in two stages: to 21 °C within two hours of 57 °C, and to 5 °C within six in all. */
export const COOLING = {
  fromC: 57,
  first: { toC: 21, minutes: 2 * HOUR },
  all: { toC: 5, minutes: 6 * HOUR },
  source: foodCode('3-501.14(A)'),
} as const

/** The rise from the fridge to hot takes no longer; a microwave's heat stands covered for two minutes. */
export const REHEATING = { minutes: 2 * HOUR, source: foodCode('3-403.11(D)') } as const

/** What others allow for food that stands out: for information, the shorter limit counts. */
export type AlsoSaid = 'uk-hot-two-hours' | 'uk-cold-four-hours' | 'scotland-party-four-hours' | 'fsanz-four-hours'
export const ALSO_SAID: Readonly<Record<AlsoSaid, { readonly minutes: number; readonly source: Source }>> = {
  'uk-hot-two-hours': { minutes: 2 * HOUR, source: UK_HYGIENE('para 7: businesses, once') },
  'uk-cold-four-hours': { minutes: 4 * HOUR, source: UK_HYGIENE('para 5: businesses, once') },
  'scotland-party-four-hours': { minutes: 4 * HOUR, source: FSS_CHILLING },
  'fsanz-four-hours': { minutes: 4 * HOUR, source: FSANZ },
}
const ALSO: Readonly<Record<Rules, readonly AlsoSaid[]>> = {
  strictest: [],
  eu: [],
  us: [],
  uk: ['uk-hot-two-hours', 'uk-cold-four-hours', 'scotland-party-four-hours'],
  au: ['fsanz-four-hours'],
}
export const alsoSaid = (rules: Rules): readonly AlsoSaid[] => ALSO[rules]

/** Where the rules that stand in no figure come from. */
export const SOURCES = {
  rawEggUs: source('FoodSafety.gov', 'People at Risk; eggs cooked until firm, or pasteurised', null, 'read'),
  rawEggUk: source('FSA, ACMSF', 'British Lion eggs may be served runny', 2017, 'quoted', '11 October 2017'),
  shellfish: source('FDA', 'Selecting and Serving Fresh and Frozen Seafood Safely', null, 'quoted'),
  shellfishDays: source('USDA FSIS', 'FoodKeeper, live shellfish', null, 'read', 'record 157'),
  thaw: source('USDA FSIS', 'thawing a turkey: fridge, cold water', null, 'quoted'),
  shallow: source('USDA FSIS', 'Leftovers and Food Safety: shallow containers, at most 5 cm deep', null, 'quoted'),
  reheatOnce: source('FSA', 'advice on reheating: once', null, 'quoted'),
} as const
