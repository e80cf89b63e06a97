'use client'

import { WordChoice } from '#app/_ui/word.tsx'
import type { Evening } from '#lib/domain/evening.ts'
import css from './view-choice.module.css'
import type { Zoom } from './zoom.ts'

const ZOOM_WORDS: Readonly<Record<Zoom, string>> = { days: 'Days', evening: 'Evening', hour: 'An hour', ten: 'Ten minutes' }

/** How near the drawing is looked at: from all days to ten minutes a screen. */
export function ZoomChoice({
  zooms,
  zoom,
  onZoom,
}: {
  readonly zooms: readonly Zoom[]
  readonly zoom: Zoom
  readonly onZoom: (zoom: Zoom) => void
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset of inputs
    <div className={css.zoom} role="group" aria-label="How much time on a screen">
      {zooms.map((each) => (
        <button key={each} type="button" aria-pressed={each === zoom} onClick={() => onZoom(each)}>
          {ZOOM_WORDS[each]}
        </button>
      ))}
    </div>
  )
}

/** Up to so many stand side by side; more are a word to choose. */
const SIDE_BY_SIDE = 3

/** Whose steps have a column of their own, where not everybody's fit. */
export function CookChoice({
  evening,
  own,
  cook,
  onCook,
}: {
  readonly evening: Evening
  /** The cook who reads. */
  readonly own: string | null
  readonly cook: string | null
  readonly onCook: (cook: string) => void
}) {
  const named = evening.cooks.map(({ id, name }) => [id, `${name || 'somebody'}${id === own ? ', you' : ''}`] as const)
  if (named.length > SIDE_BY_SIDE)
    return (
      <p className={css.whose}>
        The evening of <WordChoice label="Whose evening" value={cook ?? ''} options={named} onChoose={onCook} />
      </p>
    )
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset of inputs
    <div className={css.cooks} role="group" aria-label="Whose evening">
      {named.map(([id, words]) => (
        <button key={id} type="button" aria-pressed={id === cook} onClick={() => onCook(id)}>
          {words}
        </button>
      ))}
    </div>
  )
}
