'use client'

import { useId, useMemo } from 'react'
import { clockText, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { Hand } from './hand.tsx'
import { PaintHeads } from './paint-heads.tsx'
import { PaintKit } from './paint-kit.tsx'
import { cueKey, PaintLabel } from './paint-label.tsx'
import { PaintMark } from './paint-marks.tsx'
import { NowLine } from './paint-now.tsx'
import { PaintTable } from './paint-table.tsx'
import type { Shape } from './picture/columns.ts'
import { LINE } from './picture/labels.ts'
import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  readonly picture: Picture
  readonly shape: Shape
  /** Key of the chosen label. */
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
  /** The server's clock, when it lies inside the picture. */
  readonly now: number | null
}

const HEADS = { wide: 54, phone: 8 } as const

/** The running order as the table seen from above. One drawing, and over it one target for each line of each cook. */
export function PictureView({ evening, order, names, picture, shape, chosen, onChoose, now }: Props) {
  const hatchId = useId()
  const top = HEADS[shape]
  const height = picture.height + top
  const current = picture.labels.find((label) => label.key === chosen) ?? null
  const clashing = useMemo(() => new Set(order.clashes.flatMap((clash) => clash.steps)), [order])
  const { columns } = picture
  const line = LINE[shape]
  const nowY = now !== null && now > picture.frame.from && now < picture.frame.to ? picture.scale.y(now) : null
  const kitX = current ? (picture.kitAt.get(cueKey(current)) ?? null) : null
  const mark = current ? (picture.marks.find((candidate) => candidate.key === current.key) ?? null) : null

  const restUp = !picture.labels.some((label) => label.doing.from >= picture.frame.last)

  return (
    <figure className={css.frame} aria-label="Running order, drawn" tabIndex={shape === 'wide' ? 0 : -1}>
      <svg
        className={`${css.drawing} ${shape === 'phone' ? css.phone : ''}`}
        viewBox={`0 ${-top} ${picture.width} ${height}`}
        width={picture.width}
        height={height}
        role="img"
        aria-label={summary(evening, order, picture, names, shape)}
      >
        <defs>
          <pattern id={hatchId} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect className={css.hatchGround} width="7" height="7" />
            <path className={css.hatchStroke} d="M0 0V7" />
          </pattern>
        </defs>
        <rect className={css.board} x={columns.board.x} y={0} width={columns.board.width} height={picture.height} rx={14} />
        {shape === 'wide' ? <PaintHeads evening={evening} picture={picture} names={names} top={top} /> : null}
        <path className={css.cloth} d={picture.cloth.edge} />
        <path className={css.hem} d={picture.cloth.hem} />
        {picture.ticks.map((tick) => (
          <g key={tick.y}>
            <path className={css.tick} d={`M${tick.small ? 46 : 44} ${tick.y}H50`} />
            {tick.text ? (
              <text className={tick.small ? css.half : css.hour} x={39} y={tick.y + 4.2}>
                {tick.text}
              </text>
            ) : null}
          </g>
        ))}
        {picture.scale.folds
          .map((at) => picture.scale.y(at))
          .filter((y) => picture.courses.every((row) => Math.abs(row.y - y) > 8))
          .map((y) => (
            <path className={css.fold} key={y} d={foldPath(y, picture)} />
          ))}
        <PaintKit picture={picture} names={names} chosen={current ? cueKey(current) : null} headHeight={top} />
        {picture.hatches.map(({ box, index }) => (
          <g key={index}>
            <rect
              className={css.hatch}
              x={box.x}
              y={box.y}
              width={box.width}
              height={box.height}
              rx={5}
              fill={`url(#${hatchId})`}
            />
            {box.width > 50 ? (
              <>
                <rect
                  className={css.clashPill}
                  x={box.x + box.width - 46}
                  y={box.y + box.height / 2 - 9}
                  width={42}
                  height={18}
                  rx={5}
                />
                <text className={css.clashWord} x={box.x + box.width - 25} y={box.y + box.height / 2 + 4.2}>
                  clash
                </text>
              </>
            ) : null}
          </g>
        ))}
        <PaintTable picture={picture} shape={shape} guestsFrom={evening.guestsFrom.time} restUp={restUp} />
        {current && kitX !== null && mark ? <path className={css.thread} d={`M${mark.x} ${mark.y + 4.2}H${kitX}`} /> : null}
        {nowY === null ? null : <NowLine y={nowY} picture={picture} clock={clockText(now ?? 0, evening.zone)} />}
        {picture.sits.map((sit) =>
          sit.box.height >= 26 && sit.to < picture.frame.to ? (
            <text
              className={css.sits}
              key={`${sit.cook}.${sit.from}`}
              x={sit.box.x + line.left}
              y={sitBaseline(sit.box, picture)}
            >
              sits {minutesText((sit.to - sit.from) / 60_000)}
            </text>
          ) : null,
        )}
        {picture.marks.map((item) => (
          <g
            className={`${item.doing.cue.state === 'done' ? css.done : ''} ${item.key === chosen ? css.chosen : ''}`}
            key={item.key}
          >
            <PaintMark mark={item} />
          </g>
        ))}
        {picture.labels.map((label) => (
          <PaintLabel
            key={label.key}
            label={label}
            chosen={current}
            clash={clashing.has(label.doing.cue.step)}
            clockWidth={line.clock}
            lead={line.lead}
          />
        ))}
      </svg>
      <Hand picture={picture} names={names} shape={shape} chosen={chosen} onChoose={onChoose} top={top} />
    </figure>
  )
}

const foldPath = (y: number, picture: Picture): string => {
  const { board, table, ovens, rings, colds } = picture.columns
  const over =
    y < picture.laid
      ? [board]
      : [
          { x: board.x, width: table.x - board.x },
          { x: table.x + table.width, width: board.x + board.width - table.x - table.width },
        ]
  return [...over, ...ovens, ...(rings ? [rings.board] : []), ...colds].map(({ x, width }) => `M${x} ${y}h${width}`).join('')
}

/** The middle of a sit, moved off a course line that runs through it. */
const sitBaseline = (box: { y: number; height: number }, picture: Picture): number => {
  const middle = box.y + box.height / 2 + 4
  const line = picture.courses.find((row) => Math.abs(row.y - (middle - 4)) < 13)
  return line ? line.y - 18 : middle
}

const summary = (evening: Evening, order: RunningOrder, picture: Picture, names: Names, shape: Shape): string => {
  const clock = (ms: number) => clockText(ms, evening.zone)
  const who = picture.columns.cooks.map((column) => names.cookName(column.id))
  const kit = [
    picture.columns.ovens.length > 0 ? 'oven' : '',
    picture.columns.rings ? 'rings' : '',
    picture.columns.colds.length > 0 ? 'cold places' : '',
  ].filter(Boolean)
  const courses = order.courses.map((course) => `${names.courseName(course.course)} ${clockText(course.toTable, evening.zone)}`)
  return sentence(
    `running order drawn from ${clock(picture.frame.from)} down to ${clock(picture.frame.to)}: ${[...who, 'the table', ...(shape === 'wide' ? kit : [])].join(', ')}. To table: ${courses.join(', ')}. The list says the same in words.`,
  )
}
