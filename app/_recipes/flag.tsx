import type { ReactNode } from 'react'
import type { Doubt } from '#lib/recipes/preview.ts'
import css from './recipes.module.css'

/** A question mark on a torn-off corner: something here needs a person. `word` says what kind of thing, beside the shape. */
export function Flag({ word, children }: { readonly word: string; readonly children: ReactNode }) {
  return (
    <p className={css.flag}>
      <FlagMark />
      <span>
        <b>{word}:</b> {children}
      </span>
    </p>
  )
}

export function FlagMark() {
  return (
    <svg className={css.flagMark} width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <path d="M3 2h10.500L17 5.500V18H3z" fill="none" stroke="currentColor" strokeWidth="1.500" strokeDasharray="3 2" />
      <path
        d="M7.600 8.200a2.400 2.400 0 1 1 3.500 2.100c-.8.500-1.100.9-1.100 1.900M10 14.600v.6"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.700"
        strokeLinecap="round"
      />
    </svg>
  )
}

/** The recipe's own words, with what was not understood of them marked. */
export function MarkedText({ text, doubts }: { readonly text: string; readonly doubts: readonly Doubt[] }) {
  const marks = [...doubts]
    .filter((doubt) => doubt.to > doubt.from && doubt.from < text.length && !(doubt.from === 0 && doubt.to >= text.length))
    .sort((a, b) => a.from - b.from)
  const pieces: ReactNode[] = []
  let at = 0
  for (const mark of marks) {
    if (mark.from < at) continue
    pieces.push(text.slice(at, mark.from))
    pieces.push(
      <mark key={`${mark.from}.${mark.kind}`} className={css.mark}>
        {text.slice(mark.from, mark.to)}
        <span className="vh"> (not understood)</span>
      </mark>,
    )
    at = mark.to
  }
  pieces.push(text.slice(at))
  return <>{pieces}</>
}
