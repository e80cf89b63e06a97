'use client'

import { memo, type RefObject } from 'react'
import { PaintLabel } from './paint-label.tsx'
import { PaintMark } from './paint-marks.tsx'
import type { Picture } from './picture/picture.ts'
import { useGlide } from './use-glide.ts'
import type { Settling } from './use-settling.ts'
import { useTurn } from './use-turn.ts'

interface Props {
  /** The column's id. */
  readonly column: string
  readonly lines: Settling & {
    readonly picture: Picture
    /** The steps that clash. */
    readonly clashing: ReadonlySet<string>
  }
  readonly turn: number
  /** The id of the pattern of rungs. */
  readonly rungs: string
  /** Where the drawing begins on the screen. */
  readonly top: RefObject<number>
}

/** What the cooks of one column do. */
export const ColumnLines = memo(function ColumnLines({ column, lines, turn, rungs, top }: Props) {
  const { picture, moved, isGliding, clashing } = useTurn(lines, turn, { isAtOnce: !lines.isGliding })
  const drawing = useGlide(picture, isGliding, top)
  const cooks = picture.columns.cooks.find(({ id }) => id === column)?.cooks ?? []
  return (
    <g ref={drawing}>
      {inPlace(picture.marks.filter(({ doing }) => cooks.includes(doing.cook))).map((mark) => (
        <PaintMark key={mark.key} mark={mark} rungs={rungs} />
      ))}
      {inPlace(picture.labels.filter((label) => label.column === column)).map((label) => (
        <PaintLabel
          key={label.key}
          label={label}
          line={picture.line}
          isClash={clashing.has(label.doing.cue.step)}
          isMoved={moved.has(label.key)}
        />
      ))}
    </g>
  )
})

/** In an order that no new plan changes: what only moves on the screen need not be taken out of the page and put in again. */
const inPlace = <Keyed extends { readonly key: string }>(all: readonly Keyed[]): readonly Keyed[] =>
  all.toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
