/** Where a figure comes from, to be shown beside it. */
export interface Source {
  readonly publisher: string
  readonly title: string
  readonly year: number | null
  /** The number of the record, table or clause within it. */
  readonly ref?: string
  /** read: the publisher's own page or file; quoted: a copy or a page that quotes it; practice: no official source; memory: to be checked. */
  readonly standing: 'read' | 'quoted' | 'practice' | 'memory'
}

export const CLDR: Source = { publisher: 'Unicode', title: 'CLDR 48.2 supplemental units', year: null, standing: 'read' }
export const PRACTICE: Source = { publisher: 'common practice', title: 'no official source', year: null, standing: 'practice' }

/** The record of USDA's table with this NDB number. */
export const sr28 = (ndb: string): Source => ({
  publisher: 'USDA',
  title: 'National Nutrient Database for Standard Reference, release 28',
  year: 2016,
  ref: `NDB ${ndb}`,
  standing: 'read',
})
