'use client'

import { memo, type RefObject, useId, useMemo } from 'react'
import { clockText, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { Hand } from './hand.tsx'
import { PaintBoard } from './paint-board.tsx'
import { PaintClashWords } from './paint-hatches.tsx'
import { PaintHeads } from './paint-heads.tsx'
import { PaintChosenKit, PaintKit } from './paint-kit.tsx'
import { cueKey, PaintChosen, PaintKin } from './paint-label.tsx'
import { PaintMark } from './paint-marks.tsx'
import { NowLine } from './paint-now.tsx'
import { PaintTable } from './paint-table.tsx'
import { OTHERS } from './picture/columns.ts'
import type { Hatch } from './picture/kit.ts'
import type { Label } from './picture/labels.ts'
import { ABOVE, type Picture } from './picture/picture.ts'
import css from './picture.module.css'
import { ShareOfLines } from './share-of-lines.tsx'
import { Sheet } from './sheet.tsx'
import { useAnchor } from './use-anchor.ts'
import { useTop } from './use-glide.ts'
import type { Settling } from './use-settling.ts'
import { SHARES, TURNS, useTurn } from './use-turn.ts'

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

/**
 * The running order as the table seen from above, and over it one target for each line of each cook. Several drawings lie on
 * each other, so that choosing a line paints that line and not the evening again.
 */
export function PictureView({ evening, order, names, picture, settling, isEarly, chosen, onChoose, onZoom, now }: Props) {
  const id = useId()
  const [hatch, rungs] = [`${id}-hatch`, `${id}-rungs`]
  const current = picture.labels.find((label) => label.key === chosen) ?? null
  const nowY = now > picture.frame.from && now < picture.frame.to ? picture.scale.y(now) : null
  const hatches = isEarly ? NO_HATCHES : picture.hatches
  const frame = useAnchor(picture, current, nowY === null ? null : now)
  const { isGliding } = settling
  const [sheet, top] = useTop()
  const targets = useTurn(
    useMemo(() => ({ picture, names }), [picture, names]),
    TURNS.hand,
    { isAtOnce: !isGliding },
  )
  const words = useMemo(() => summary(evening, order, picture, names), [evening, order, picture, names])

  return (
    <figure
      ref={frame}
      className={`${css.frame} ${picture.isWider ? css.wider : ''}`}
      aria-label="Running order, drawn"
      tabIndex={picture.isWider ? 0 : undefined}
    >
      {picture.shape === 'wide' ? <PaintHeads evening={evening} picture={picture} names={names} /> : null}
      <div className={css.sheet} style={{ width: picture.width, aspectRatio: `${picture.width} / ${picture.height + ABOVE}` }}>
        <div ref={sheet} className={css.drawings} role="img" aria-label={words}>
          <Ground picture={picture} hatches={hatches} hatch={hatch} guestsFrom={evening.guestsFrom.time} isGliding={isGliding} />
          {current ? <ChosenBelow picture={picture} current={current} /> : null}
          <Lines
            picture={picture}
            order={order}
            moved={settling.moved}
            isEarly={isEarly}
            isGliding={isGliding}
            hatches={hatches}
            rungs={rungs}
            top={top}
            nowY={nowY}
            nowClock={nowY === null ? '' : clockText(now, evening.zone)}
          />
          {current ? <ChosenAbove picture={picture} current={current} rungs={rungs} /> : null}
        </div>
        <Hand {...targets} chosen={chosen} onChoose={onChoose} onZoom={onZoom} />
      </div>
    </figure>
  )
}

interface GroundProps {
  readonly picture: Picture
  readonly hatches: readonly Hatch[]
  /** The id of the pattern of clashes. */
  readonly hatch: string
  readonly guestsFrom: string
  readonly isGliding: boolean
}

/** The board, the kit and what is served. */
const Ground = memo(function Ground({ picture, hatches, hatch, guestsFrom, isGliding }: GroundProps) {
  const how = { isAtOnce: !isGliding }
  const board = useTurn(picture, TURNS.board, how)
  const kit = useTurn(
    useMemo(() => ({ picture, hatches }), [picture, hatches]),
    TURNS.kit,
    how,
  )
  return (
    <Sheet picture={picture} tone={`${css.ground} ${isGliding ? css.gliding : ''}`}>
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={css.hatchGround} width="7" height="7" />
          <path className={css.hatchStroke} d="M0 0V7" />
        </pattern>
      </defs>
      <PaintBoard picture={board} />
      <PaintKit picture={kit.picture} hatches={kit.hatches} pattern={hatch} />
      <PaintTable picture={board} guestsFrom={guestsFrom} />
    </Sheet>
  )
})

interface LinesProps extends Pick<Props, 'picture' | 'order' | 'isEarly'> {
  readonly moved: Settling['moved']
  readonly isGliding: boolean
  readonly hatches: readonly Hatch[]
  /** The id of the pattern of rungs. */
  readonly rungs: string
  /** Where the drawing begins on the screen. */
  readonly top: RefObject<number>
  readonly nowY: number | null
  readonly nowClock: string
}

/** What everybody does, and when they sit. */
const Lines = memo(function Lines({
  picture,
  order,
  moved,
  isEarly,
  isGliding,
  hatches,
  rungs,
  top,
  nowY,
  nowClock,
}: LinesProps) {
  const { line } = picture
  const lines = useMemo(
    () => ({ picture, moved, isGliding, clashing: new Set(isEarly ? [] : order.clashes.flatMap((clash) => clash.steps)) }),
    [picture, moved, isGliding, isEarly, order],
  )
  return (
    <>
      <Sheet picture={picture} tone={css.lines ?? ''}>
        <defs>
          <pattern id={rungs} width="6" height="4" patternUnits="userSpaceOnUse">
            <path className={css.rung} d="M0 2h6" />
          </pattern>
        </defs>
        <PaintClashWords hatches={hatches} />
        {nowY === null ? null : <NowLine y={nowY} picture={picture} clock={nowClock} />}
        {picture.sits.map((sit) =>
          sit.said === null ? null : (
            <text className={css.sits} key={`${sit.column}.${sit.from}`} x={sit.box.x + line.left} y={sit.said}>
              {sit.column === OTHERS ? 'all sit' : 'sits'} {minutesText((sit.to - sit.from) / 60_000)}
            </text>
          ),
        )}
      </Sheet>
      {Array.from({ length: SHARES }, (_, share) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a share is its number
        <ShareOfLines key={share} share={share} lines={lines} rungs={rungs} top={top} />
      ))}
    </>
  )
})

interface ChosenProps {
  readonly picture: Picture
  readonly current: Label
}

const markOf = ({ picture, current }: ChosenProps) => picture.marks.find((mark) => mark.key === current.key) ?? null

/** What the chosen line stands in, and the thread that leads there. */
function ChosenBelow({ picture, current }: ChosenProps) {
  const cue = cueKey(current)
  const kitX = picture.kitAt.get(cue)
  const mark = markOf({ picture, current })
  return (
    <Sheet picture={picture} tone={css.below ?? ''}>
      <PaintChosenKit picture={picture} chosen={cue} />
      {kitX !== undefined && mark ? <path className={css.thread} d={`M${mark.x} ${mark.y + 4.2}H${kitX}`} /> : null}
    </Sheet>
  )
}

/** The chosen line and its mark, and the other lines of its step. */
function ChosenAbove({ picture, current, rungs }: ChosenProps & { readonly rungs: string }) {
  const cue = cueKey(current)
  const mark = markOf({ picture, current })
  return (
    <Sheet picture={picture} tone={css.above ?? ''}>
      {mark ? <PaintMark mark={mark} isChosen rungs={rungs} /> : null}
      {picture.labels
        .filter((label) => label.key !== current.key && cueKey(label) === cue)
        .map((label) => (
          <PaintKin key={label.key} label={label} line={picture.line} />
        ))}
      <PaintChosen label={current} line={picture.line} />
    </Sheet>
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
