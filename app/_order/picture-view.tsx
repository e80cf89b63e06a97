'use client'

import { useId, useMemo } from 'react'
import { clockText, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { Hand } from './hand.tsx'
import { PaintBoard } from './paint-board.tsx'
import { PaintHeads } from './paint-heads.tsx'
import { PaintKit } from './paint-kit.tsx'
import { cueKey, PaintLabel } from './paint-label.tsx'
import { PaintMark } from './paint-marks.tsx'
import { NowLine } from './paint-now.tsx'
import { PaintTable } from './paint-table.tsx'
import { OTHERS } from './picture/columns.ts'
import type { Hatch } from './picture/kit.ts'
import { ABOVE, type Picture } from './picture/picture.ts'
import css from './picture.module.css'
import { useAnchor } from './use-anchor.ts'
import type { Settling } from './use-settling.ts'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  readonly picture: Picture
  readonly settling: Settling
  /** A better order is being looked for: what does not fit yet is no clash. */
  readonly isEarly: boolean
  /** Key of the chosen label. */
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
  readonly onZoom: (by: 1 | -1) => void
  /** The server's clock. */
  readonly now: number
}

const NO_HATCHES: readonly Hatch[] = []

/** The running order as the table seen from above. One drawing, and over it one target for each line of each cook. */
export function PictureView({ evening, order, names, picture, settling, isEarly, chosen, onChoose, onZoom, now }: Props) {
  const id = useId()
  const [hatch, rungs] = [`${id}-hatch`, `${id}-rungs`]
  const { shape, line, scale } = picture
  const current = picture.labels.find((label) => label.key === chosen) ?? null
  const currentCue = current ? cueKey(current) : null
  const clashing = useMemo(() => new Set(isEarly ? [] : order.clashes.flatMap((clash) => clash.steps)), [order, isEarly])
  const nowY = now > picture.frame.from && now < picture.frame.to ? scale.y(now) : null
  const kitX = currentCue === null ? null : (picture.kitAt.get(currentCue) ?? null)
  const mark = current ? (picture.marks.find((candidate) => candidate.key === current.key) ?? null) : null
  const frame = useAnchor(picture, current, nowY === null ? null : now)

  return (
    <figure
      ref={frame}
      className={`${css.frame} ${picture.isWider ? css.wider : ''}`}
      aria-label="Running order, drawn"
      tabIndex={picture.isWider ? 0 : undefined}
    >
      {shape === 'wide' ? <PaintHeads evening={evening} picture={picture} names={names} /> : null}
      <div className={css.sheet}>
        <svg
          className={`${css.drawing} ${settling.isGliding ? css.gliding : ''}`}
          viewBox={`0 ${-ABOVE} ${picture.width} ${picture.height + ABOVE}`}
          width={picture.width}
          height={picture.height + ABOVE}
          role="img"
          aria-label={summary(evening, order, picture, names)}
        >
          <defs>
            <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect className={css.hatchGround} width="7" height="7" />
              <path className={css.hatchStroke} d="M0 0V7" />
            </pattern>
            <pattern id={rungs} width="6" height="4" patternUnits="userSpaceOnUse">
              <path className={css.rung} d="M0 2h6" />
            </pattern>
          </defs>
          <PaintBoard picture={picture} />
          <PaintKit picture={picture} chosen={currentCue} hatches={isEarly ? NO_HATCHES : picture.hatches} pattern={hatch} />
          <PaintTable picture={picture} guestsFrom={evening.guestsFrom.time} />
          {current && kitX !== null && mark ? <path className={css.thread} d={`M${mark.x} ${mark.y + 4.2}H${kitX}`} /> : null}
          {nowY === null ? null : <NowLine y={nowY} picture={picture} clock={clockText(now, evening.zone)} />}
          {picture.sits.map((sit) =>
            sit.said === null ? null : (
              <text className={css.sits} key={`${sit.column}.${sit.from}`} x={sit.box.x + line.left} y={sit.said}>
                {sit.column === OTHERS ? 'all sit' : 'sits'} {minutesText((sit.to - sit.from) / 60_000)}
              </text>
            ),
          )}
          {picture.marks.map((each) => (
            <PaintMark key={each.key} mark={each} isChosen={each.key === chosen} rungs={rungs} />
          ))}
          {picture.labels.map((label) => (
            <PaintLabel
              key={label.key}
              label={label}
              line={line}
              isChosen={label.key === chosen}
              isKin={label.key !== chosen && cueKey(label) === currentCue}
              isClash={clashing.has(label.doing.cue.step)}
              isMoved={settling.moved.has(label.key)}
            />
          ))}
        </svg>
        <Hand picture={picture} names={names} chosen={chosen} onChoose={onChoose} onZoom={onZoom} />
      </div>
    </figure>
  )
}

const summary = (evening: Evening, order: RunningOrder, picture: Picture, names: Names): string => {
  const clock = (ms: number) => clockText(ms, evening.zone)
  const { cooks, ovens, rings, colds } = picture.columns
  const drawn = [
    ...cooks.map((column) => (column.id === OTHERS ? 'the others' : names.cookName(column.id))),
    'the table',
    ...(ovens.length > 0 ? ['oven'] : []),
    ...(rings ? ['rings'] : []),
    ...(colds.length > 0 ? ['cold places'] : []),
  ]
  const courses = order.courses.map((course) => `${names.courseName(course.course)} ${clockText(course.toTable, evening.zone)}`)
  return sentence(
    `running order drawn from ${clock(picture.frame.from)} down to ${clock(picture.frame.to)}: ${drawn.join(', ')}. To table: ${courses.join(', ')}. The list says the same in words.`,
  )
}
