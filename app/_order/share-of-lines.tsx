'use client'

import { memo, type RefObject } from 'react'
import { PaintLabel } from './paint-label.tsx'
import { PaintMark } from './paint-marks.tsx'
import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'
import { Sheet } from './sheet.tsx'
import { useGlide } from './use-glide.ts'
import type { Settling } from './use-settling.ts'
import { SHARES, TURNS, useTurn } from './use-turn.ts'

interface Props {
  readonly share: number
  readonly lines: Settling & {
    readonly picture: Picture
    /** The steps that clash. */
    readonly clashing: ReadonlySet<string>
  }
  /** The id of the pattern of rungs. */
  readonly rungs: string
  /** Where the drawing begins on the screen. */
  readonly top: RefObject<number>
}

/** A part of what everybody does: their marks and their lines, the same ones whatever the order. */
export const ShareOfLines = memo(function ShareOfLines({ share, lines, rungs, top }: Props) {
  const { picture, moved, isGliding, clashing } = useTurn(lines, TURNS.lines + share, { isAtOnce: !lines.isGliding })
  const drawing = useGlide(picture, isGliding, top)
  const isOurs = ({ key }: Keyed) => shareOf(key) === share
  return (
    <Sheet picture={picture} tone={css.lines ?? ''}>
      <g ref={drawing}>
        {inPlace(picture.marks.filter(isOurs)).map((mark) => (
          <PaintMark key={mark.key} mark={mark} rungs={rungs} />
        ))}
        {inPlace(picture.labels.filter(isOurs)).map((label) => (
          <PaintLabel
            key={label.key}
            label={label}
            line={picture.line}
            isClash={clashing.has(label.doing.cue.step)}
            isMoved={moved.has(label.key)}
          />
        ))}
      </g>
    </Sheet>
  )
})

interface Keyed {
  readonly key: string
}

const shareOf = (key: string): number => [...key].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % SHARES

/** In an order that no new plan changes: what only moves on the screen need not be taken out of the page and put in again. */
const inPlace = <Kind extends Keyed>(all: readonly Kind[]): readonly Kind[] =>
  all.toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
