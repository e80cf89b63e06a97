/** Where a rule or a row of the map is from. */
export interface TableSource {
  readonly publisher: string
  readonly title: string
  readonly edition: string
  /** read: the publisher's own text, or a copy of it; quoted: a page that quotes it; practice: common practice, no source; memory: to be checked. */
  readonly standing: 'read' | 'quoted' | 'practice' | 'memory'
}

export type SourceKey =
  | 'eu-1169'
  | 'us-falcpa'
  | 'us-tree-nuts'
  | 'au-schedule-9'
  | 'fsa-14'
  | 'codex-1'
  | 'codex-118'
  | 'coeliac-uk'
  | 'iso-23662'
  | 'codex-24'
  | 'kosher-basics'
  | 'efsa-lactose'
  | 'nhs-pregnancy'
  | 'at-risk'
  | 'usda-retention'
  | 'memory'
  | 'practice'

/** Every source that lib/table cites. */
export const TABLE_SOURCES: Readonly<Record<SourceKey, TableSource>> = {
  'eu-1169': {
    publisher: 'European Union, retained in the UK',
    title: 'Regulation (EU) No 1169/2011, Annex II',
    edition: 'as amended; copy of the University of Reading',
    standing: 'read',
  },
  'us-falcpa': {
    publisher: 'United States',
    title: 'Food Allergen Labeling and Consumer Protection Act and FASTER Act',
    edition: '2004 and 2021',
    standing: 'quoted',
  },
  'us-tree-nuts': {
    publisher: 'FDA',
    title: 'Questions and Answers Regarding Food Allergens',
    edition: '5th edition, January 2025',
    standing: 'quoted',
  },
  'au-schedule-9': {
    publisher: 'Food Standards Australia New Zealand',
    title: 'Food Standards Code, Standard 1.2.3 and Schedule 9',
    edition: 'names as listed by the NSW Food Authority',
    standing: 'read',
  },
  'fsa-14': { publisher: 'Food Standards Agency', title: 'The 14 allergens', edition: 'leaflet', standing: 'quoted' },
  'codex-1': { publisher: 'Codex Alimentarius', title: 'CXS 1-1985', edition: 'revision of 2024', standing: 'memory' },
  'codex-118': { publisher: 'Codex Alimentarius', title: 'CXS 118-1979, 2.1', edition: 'revision of 2008', standing: 'read' },
  'coeliac-uk': { publisher: 'Coeliac UK', title: 'Gluten in food and drink', edition: 'undated', standing: 'read' },
  'iso-23662': { publisher: 'ISO', title: 'ISO 23662, clause 4', edition: '2021', standing: 'read' },
  'codex-24': { publisher: 'Codex Alimentarius', title: 'CAC/GL 24, 2.1 and 3.1', edition: '1997', standing: 'read' },
  'kosher-basics': {
    publisher: 'two Jewish community pages',
    title: 'Kosher principles, basics',
    edition: 'undated',
    standing: 'read',
  },
  'efsa-lactose': { publisher: 'EFSA', title: 'EFSA Journal 8(9):1777', edition: '2010', standing: 'read' },
  'nhs-pregnancy': { publisher: 'NHS 111 Wales', title: 'Pregnancy: foods to avoid', edition: 'undated', standing: 'read' },
  'at-risk': { publisher: 'FoodSafety.gov', title: 'People at risk', edition: 'undated', standing: 'read' },
  'usda-retention': {
    publisher: 'USDA',
    title: 'Table of Nutrient Retention Factors, nutrient 221',
    edition: 'release 6, December 2007',
    standing: 'quoted',
  },
  memory: { publisher: 'well known', title: 'from memory, read the label', edition: '', standing: 'memory' },
  practice: { publisher: 'common practice', title: 'no source', edition: '', standing: 'practice' },
}
