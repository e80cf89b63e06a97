import type { Source } from '#lib/domain/source.ts'

export const CLDR: Source = { publisher: 'Unicode', title: 'CLDR 48.2 supplemental units', year: null, standing: 'read' }

/** The record of USDA's table with this NDB number. */
export const sr28 = (ndb: string): Source => ({
  publisher: 'USDA',
  title: 'National Nutrient Database for Standard Reference, release 28',
  year: 2016,
  ref: `NDB ${ndb}`,
  standing: 'read',
})
