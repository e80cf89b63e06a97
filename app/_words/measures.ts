import type { Measures } from '#lib/domain/unit-words.ts'

/** Whose cups, spoons and pints. */
export const measuresWords: Readonly<Record<Measures, string>> = {
  metric: 'metric measures',
  uk: 'British measures',
  us: 'American measures',
  au: 'Australian measures',
}
