import { memo } from 'react'
import { PaintHatches } from './paint-hatches.tsx'
import type { Hatch, Thread } from './picture/kit.ts'
import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'

interface Props {
  readonly picture: Picture
  readonly hatches: readonly Hatch[]
  /** The id of the pattern of clashes. */
  readonly pattern: string
}

const CHAR = 6.4

/** A name is said again before the last one is out of sight. */
const AGAIN = 700

/** Where the name stands along a thread: in its middle, several times on a long one, nowhere when it is too long for it. */
const namedAt = (thread: Thread, char: number, room: number): readonly number[] => {
  if (thread.height < thread.held.name.length * char + room) return []
  const times = Math.ceil(thread.height / AGAIN)
  return Array.from({ length: times }, (_, index) => thread.y + ((index + 0.5) / times) * thread.height)
}

interface Named {
  readonly thread: Thread
  readonly y: number
}

const COLD_CHAR = 5.8

/** In a full fridge two threads may share a lane: no thread covers a name then, and no name another. */
const coldNames = (threads: readonly Thread[]): readonly Named[] => {
  const placed: Named[] = []
  const half = ({ held }: Thread): number => (held.name.length * COLD_CHAR) / 2
  for (const thread of threads)
    for (const y of namedAt(thread, COLD_CHAR, 10)) {
      const isFree = placed.every((one) => one.thread.x !== thread.x || Math.abs(one.y - y) > half(one.thread) + half(thread))
      if (isFree) placed.push({ thread, y })
    }
  return placed
}

const upright = (x: number, y: number): string => `translate(${x} ${y}) rotate(-90)`

/** Ovens as ribbons, rings as pans, cold places as threads (drawing rule 7). */
export const PaintKit = memo(function PaintKit({ picture, hatches, pattern }: Props) {
  const { columns, height } = picture
  const boards = [...columns.ovens, ...(columns.rings ? [columns.rings.board] : []), ...columns.colds]
  return (
    <>
      {boards.map((board) => (
        <rect className={css.board} key={board.id} x={board.x} y={0} width={board.width} height={height} rx={10} />
      ))}
      {picture.ribbons.map(({ column, ribbon }) => (
        <g key={column.id}>
          <path className={css.heat} d={ribbon.fill} />
          <path className={css.heatEdge} d={ribbon.edge} />
        </g>
      ))}
      <PaintHatches hatches={hatches} pattern={pattern} />
      {picture.ribbons.map(({ column, ribbon, threads }) => (
        <g key={column.id}>
          {threads.map((thread) => (
            <InOven key={thread.held.key} thread={thread} />
          ))}
          {ribbon.figures.map((figure) => (
            <text className={css.degrees} key={figure.y} x={column.x + column.width - 5} y={figure.y + 4}>
              {figure.c}°
            </text>
          ))}
        </g>
      ))}
      {picture.pans.map((thread) => (
        <OnRing key={thread.held.key} thread={thread} />
      ))}
      {picture.colds.map((thread) => (
        <g key={thread.held.key}>
          <rect className={css.cold} x={thread.x} y={thread.y} width={thread.width} height={Math.max(8, thread.height)} rx={5} />
        </g>
      ))}
      {coldNames(picture.colds).map(({ thread, y }) => (
        <text
          className={css.coldName}
          key={`${thread.held.key} ${y}`}
          transform={upright(thread.x + thread.width / 2, y)}
          y={3.6}
        >
          {thread.held.name}
        </text>
      ))}
    </>
  )
})

interface InProps {
  readonly thread: Thread
  readonly isChosen?: boolean
}

function InOven({ thread, isChosen = false }: InProps) {
  return (
    <g>
      <path className={isChosen ? css.insideChosen : css.inside} d={`M${thread.x} ${thread.y}V${thread.y + thread.height}`} />
      {[thread.y, ...thread.knots, thread.y + thread.height].map((y, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: knots have no identity beyond their place
        <circle className={css.knot} key={index} cx={thread.x} cy={y} r={3.8} />
      ))}
      {namedAt(thread, CHAR, 14).map((y) => (
        <text className={css.kitName} key={y} transform={upright(thread.x + 5, y)} y={9}>
          {thread.held.name}
        </text>
      ))}
    </g>
  )
}

function OnRing({ thread, isChosen = false }: InProps) {
  return (
    <g>
      <rect
        className={isChosen ? css.panChosen : css.pan}
        x={thread.x}
        y={thread.y}
        width={thread.width}
        height={Math.max(9, thread.height)}
        rx={6}
      />
      <path className={css.lid} d={`M${thread.x + 2.5} ${thread.y + 4.5}h${thread.width - 5}`} />
      {namedAt(thread, CHAR, 12).map((y) => (
        <text className={css.kitName} key={y} transform={upright(thread.x + thread.width / 2, y + 2)} y={3.8}>
          {thread.held.name}
        </text>
      ))}
    </g>
  )
}

/** Over the kit: what the chosen cue, "step.batch", stands in. */
export function PaintChosenKit({ picture, chosen }: { readonly picture: Picture; readonly chosen: string }) {
  const isIts = ({ held }: Thread) => held.step !== null && `${held.step}.${held.batch}` === chosen
  return (
    <>
      {picture.ribbons.flatMap(({ threads }) =>
        threads.filter(isIts).map((thread) => <InOven key={thread.held.key} thread={thread} isChosen />),
      )}
      {picture.pans.filter(isIts).map((thread) => (
        <OnRing key={thread.held.key} thread={thread} isChosen />
      ))}
    </>
  )
}
