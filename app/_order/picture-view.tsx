'use client'

import { useId, useMemo, useRef } from 'react'
import { clockText, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { Head, PaintKit } from './paint-kit.tsx'
import { PaintMark } from './paint-marks.tsx'
import { PaintTable } from './paint-table.tsx'
import type { Shape } from './picture/columns.ts'
import { type Label, LINE } from './picture/labels.ts'
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
const cueKey = (label: Label): string => `${label.doing.cue.step}.${label.doing.cue.batch}`

/** The running order as the table seen from above. One drawing, and over it one target for each line of each cook. */
export function PictureView({ evening, order, names, picture, shape, chosen, onChoose, now }: Props) {
  const hatchId = useId()
  const hand = useRef<SVGSVGElement>(null)
  const top = HEADS[shape]
  const height = picture.height + top
  const current = picture.labels.find((label) => label.key === chosen) ?? null
  const clashing = useMemo(() => new Set(order.clashes.flatMap((clash) => clash.steps)), [order])
  const { columns } = picture
  const line = LINE[shape]
  const nowY = now !== null && now > picture.frame.from && now < picture.frame.to ? picture.scale.y(now) : null
  const kitX = current ? (picture.kitAt.get(cueKey(current)) ?? null) : null
  const mark = current ? (picture.marks.find((candidate) => candidate.key === current.key) ?? null) : null

  const move = (label: Label, key: string): Label | undefined => {
    const own = picture.labels.filter((other) => other.cook === label.cook)
    const at = own.findIndex((other) => other.key === label.key)
    const cooks = columns.cooks.map((column) => column.id)
    switch (key) {
      case 'ArrowDown':
        return own[at + 1]
      case 'ArrowUp':
        return own[at - 1]
      case 'Home':
        return own[0]
      case 'End':
        return own[own.length - 1]
      case 'ArrowLeft':
      case 'ArrowRight': {
        const next = cooks[cooks.indexOf(label.cook) + (key === 'ArrowLeft' ? -1 : 1)]
        const others = picture.labels.filter((other) => other.cook === next)
        const distance = (other: Label) => Math.abs(other.doing.from - label.doing.from)
        return others.reduce<Label | undefined>(
          (best, other) => (!best || distance(other) < distance(best) ? other : best),
          undefined,
        )
      }
    }
    return undefined
  }

  const onKey = (event: React.KeyboardEvent, label: Label) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      onChoose(label.key)
      return
    }
    const next = move(label, event.key)
    if (!next) return
    event.preventDefault()
    onChoose(next.key)
    const target = hand.current?.querySelector(`[data-key="${CSS.escape(next.key)}"]`)
    if (target instanceof SVGElement) target.focus()
  }

  const bands = useMemo(() => bandsOf(picture), [picture])
  const tabStop = current?.key ?? picture.labels[0]?.key
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
        {shape === 'wide' ? <Heads evening={evening} picture={picture} names={names} top={top} /> : null}
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
      {/* biome-ignore lint/a11y/useSemanticElements: a group of targets inside an SVG has no HTML element */}
      <svg
        ref={hand}
        className={`${css.hand} ${shape === 'phone' ? css.phone : ''}`}
        viewBox={`0 ${-top} ${picture.width} ${height}`}
        width={picture.width}
        height={height}
        role="group"
        aria-label="Steps in the drawing. Up and down walk one cook’s steps, left and right change cook."
      >
        {picture.labels.map((label) => {
          const band = bands.get(label.key)
          return band ? (
            // biome-ignore lint/a11y/useSemanticElements: SVG has no button
            <g
              key={label.key}
              className={css.hit}
              data-key={label.key}
              role="button"
              tabIndex={label.key === tabStop ? 0 : -1}
              aria-pressed={label.key === chosen}
              aria-label={`${label.clock} ${label.doing.words}${label.doing.tail}, ${names.cookName(label.cook)}`}
              onClick={(event) => {
                onChoose(label.key)
                if (shape === 'phone') keepInView(event.currentTarget)
              }}
              onKeyDown={(event) => onKey(event, label)}
            >
              <rect className={css.target} x={band.x} y={band.y} width={band.width} height={band.height} />
              <rect
                className={css.ring}
                x={label.box.x - 6}
                y={label.box.y - 1.5}
                width={label.box.width + 12}
                height={label.box.height + 4}
                rx={5}
              />
            </g>
          ) : null
        })}
      </svg>
    </figure>
  )
}

/** On a phone the panel covers the lower half: what was chosen moves up out of it. */
const keepInView = (element: SVGGElement) => {
  const { top, bottom } = element.getBoundingClientRect()
  if (bottom < window.innerHeight * 0.5 && top > 0) return
  const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches
  window.scrollBy({ top: top - window.innerHeight * 0.2, behavior: calm ? 'auto' : 'smooth' })
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

/** The whole column is live: each line's target reaches half way to its neighbours. */
const bandsOf = (picture: Picture): ReadonlyMap<string, { x: number; y: number; width: number; height: number }> =>
  new Map(
    picture.columns.cooks.flatMap((column) => {
      const own = picture.labels.filter((label) => label.cook === column.id).toSorted((a, b) => a.box.y - b.box.y)
      const middle = (label: Label) => label.box.y + label.box.height / 2
      return own.map((label, index) => {
        const [before, after] = [own[index - 1], own[index + 1]]
        const from = before ? (middle(before) + middle(label)) / 2 : Math.max(0, middle(label) - 24)
        const to = after ? (middle(label) + middle(after)) / 2 : Math.min(picture.height, middle(label) + 24)
        return [label.key, { x: column.x, y: from, width: column.width, height: to - from }] as const
      })
    }),
  )

function Heads({ evening, picture, names, top }: { evening: Evening; picture: Picture; names: Names; top: number }) {
  return (
    <>
      {picture.columns.cooks.map((column) => {
        const cook = evening.cooks.find((candidate) => candidate.id === column.id)
        const first = cook?.presence.find((presence) => presence.from.day === 0)
        const here = first ? `from ${first.from.time}` : ''
        return (
          <Head
            key={column.id}
            large
            x={column.x + column.width / 2}
            y={-top}
            title={names.cookName(column.id)}
            sub={[cook?.host ? 'host' : 'here', here].filter(Boolean).join(cook?.host ? ', ' : ' ')}
          />
        )
      })}
      <Head
        large
        x={picture.columns.table.x + picture.columns.table.width / 2}
        y={-top}
        title="The table"
        sub={`${evening.covers} places`}
      />
    </>
  )
}

interface LabelProps {
  readonly label: Label
  readonly chosen: Label | null
  readonly clash: boolean
  readonly clockWidth: number
  readonly lead: number
}

function PaintLabel({ label, chosen, clash, clockWidth, lead }: LabelProps) {
  const isChosen = chosen?.key === label.key
  const isKin = !isChosen && chosen !== null && cueKey(chosen) === cueKey(label)
  const { state } = label.doing.cue
  const wash = isChosen ? css.patch : clash ? css.clashWash : state === 'running' ? css.runningWash : null
  const tone = isChosen ? css.chosen : clash ? css.clash : state === 'done' ? css.done : state === 'running' ? css.running : ''
  return (
    <g className={`${css.label} ${tone}`}>
      {label.leader === null ? null : (
        <path className={css.leader} d={`M${label.x - 8} ${label.leader + 4}L${label.x - 3} ${label.y - 4}`} />
      )}
      {wash ? (
        <rect
          className={wash}
          x={label.box.x - 5}
          y={label.box.y - 1}
          width={label.box.width + 10}
          height={label.box.height + 3}
          rx={5}
        />
      ) : null}
      <text x={label.x} y={label.y}>
        <tspan className={css.clock}>{label.clock}</tspan>
        {label.words.map((words, index) => (
          <tspan key={words} x={label.x + clockWidth} dy={index * lead}>
            {words}
          </tspan>
        ))}
      </text>
      {isKin ? (
        <path className={css.kin} d={`M${label.x + clockWidth} ${label.y + 3.5}h${Math.max(12, label.box.width - clockWidth)}`} />
      ) : null}
    </g>
  )
}

/** The middle of a sit, moved off a course line that runs through it. */
const sitBaseline = (box: { y: number; height: number }, picture: Picture): number => {
  const middle = box.y + box.height / 2 + 4
  const line = picture.courses.find((row) => Math.abs(row.y - (middle - 4)) < 13)
  return line ? line.y - 18 : middle
}

function NowLine({ y, picture, clock }: { y: number; picture: Picture; clock: string }) {
  const { table } = picture.columns
  return (
    <>
      <path className={css.now} d={`M50 ${y}H${picture.width - 2}`} />
      <path className={css.nowUnder} d={`M50 ${y + 1.7}H${picture.width - 2}`} />
      <rect className={css.nowPill} x={0} y={y - 11} width={50} height={22} rx={11} />
      <text className={css.nowClock} x={25} y={y + 4.6}>
        {clock}
      </text>
      <g transform={`translate(${table.x + table.width - 30} ${y - 7}) scale(1.35)`}>
        <path className={css.wick} d="M0 3.5V8" />
        <path className={css.flame} d="M.9-12.5C3.4-8.4 4.5-5 4.5-1.2A4.5 5 0 0 1-4.5-1.2C-4.5-4.6-1.5-7.6.9-12.5z" />
      </g>
    </>
  )
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
