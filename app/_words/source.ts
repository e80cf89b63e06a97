import type { Source } from '#lib/domain/source.ts'

const STANDING: Readonly<Record<Source['standing'], string>> = {
  read: '',
  quoted: ', as quoted by others',
  practice: '',
  memory: ', not looked up',
}

/** "USDA, National Nutrient Database …, 2016, NDB 11124"; common practice is called just that. */
export const sourceText = (source: Source): string =>
  source.standing === 'practice'
    ? 'common practice, no official source'
    : `${[source.publisher, source.title, source.year === null ? '' : String(source.year), source.ref ?? '']
        .filter(Boolean)
        .join(', ')}${STANDING[source.standing]}`
