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

export const PRACTICE: Source = { publisher: 'common practice', title: 'no official source', year: null, standing: 'practice' }
