import { ringLetters } from '#app/_words/kit.ts'
import type { Names } from '#app/_words/names.ts'
import type { Picture, Thread } from './picture/picture.ts'
import css from './picture.module.css'

interface Props {
  readonly picture: Picture
  readonly names: Names
  /** The chosen cue, "step.batch". */
  readonly chosen: string | null
  /** Top of the board below the heads. */
  readonly headHeight: number
}

const CHAR = 6.4

const isChosen = (thread: Thread, chosen: string | null): boolean =>
  thread.held.step !== null && `${thread.held.step}.${thread.held.batch}` === chosen

const upright = (x: number, y: number): string => `translate(${x} ${y}) rotate(-90)`

/** Ovens as ribbons, rings as pans, cold places as threads (drawing rule 7). */
export function PaintKit({ picture, names, chosen, headHeight }: Props) {
  const { columns, height } = picture
  const boards = [...columns.ovens, ...(columns.rings ? [columns.rings.board] : []), ...columns.colds]
  return (
    <>
      {boards.map((board) => (
        <rect className={css.board} key={board.id} x={board.x} y={0} width={board.width} height={height} rx={10} />
      ))}
      {columns.ovens.map((column) => {
        const kit = names.kit(column.id)?.kit
        return kit?.kind === 'oven' ? (
          <Head
            key={column.id}
            x={column.x + column.width / 2}
            y={-headHeight}
            title={kit.name || 'Oven'}
            sub={kit.shelves === 1 ? '1 shelf' : `${kit.shelves} shelves`}
          />
        ) : null
      })}
      {columns.rings ? (
        <>
          <Head x={columns.rings.board.x + columns.rings.board.width / 2} y={-headHeight} title="Rings" sub="" />
          {columns.rings.units.map((unit) => (
            <text className={css.small} key={unit.id} x={unit.x + unit.width / 2} y={40 - headHeight}>
              {ringLetters[unit.size]}
            </text>
          ))}
        </>
      ) : null}
      {columns.colds.map((column) => {
        const kit = names.kit(column.id)?.kit
        return kit?.kind === 'cold' ? (
          <Head
            key={column.id}
            x={column.x + column.width / 2}
            y={-headHeight}
            title={kit.keep === 'frozen' ? 'Ice' : 'Cold'}
            sub={String(kit.places)}
          />
        ) : null
      })}
      {picture.ribbons.map(({ column, ribbon, threads }) => (
        <g key={column.id}>
          <path className={css.heat} d={ribbon.fill} />
          <path className={css.heatEdge} d={ribbon.edge} />
          {threads.map((thread) => (
            <g key={thread.held.key}>
              <path
                className={isChosen(thread, chosen) ? css.insideChosen : css.inside}
                d={`M${thread.x} ${thread.y}V${thread.y + thread.height}`}
              />
              {[thread.y, ...thread.knots, thread.y + thread.height].map((y, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: knots have no identity beyond their place
                <circle className={css.knot} key={index} cx={thread.x} cy={y} r={3.8} />
              ))}
              {thread.height >= thread.held.name.length * CHAR + 14 ? (
                <text className={css.kitName} transform={upright(thread.x + 5, thread.y + thread.height / 2)} y={9}>
                  {thread.held.name}
                </text>
              ) : null}
            </g>
          ))}
          {ribbon.figures.map((figure) => (
            <text className={css.degrees} key={figure.y} x={column.x + column.width - 5} y={figure.y + 4}>
              {figure.c}°
            </text>
          ))}
        </g>
      ))}
      {picture.pans.map((thread) => (
        <g key={thread.held.key}>
          <rect
            className={isChosen(thread, chosen) ? css.panChosen : css.pan}
            x={thread.x}
            y={thread.y}
            width={thread.width}
            height={Math.max(9, thread.height)}
            rx={6}
          />
          <path className={css.lid} d={`M${thread.x + 2.5} ${thread.y + 4.5}h${thread.width - 5}`} />
          {thread.height >= thread.held.name.length * CHAR + 12 ? (
            <text
              className={css.kitName}
              transform={upright(thread.x + thread.width / 2, thread.y + thread.height / 2 + 2)}
              y={3.8}
            >
              {thread.held.name}
            </text>
          ) : null}
        </g>
      ))}
      {picture.colds.map((thread) => (
        <g key={thread.held.key}>
          <rect className={css.cold} x={thread.x} y={thread.y} width={thread.width} height={Math.max(8, thread.height)} rx={5} />
          {thread.height >= thread.held.name.length * 5.8 + 10 ? (
            <text className={css.coldName} transform={upright(thread.x + thread.width / 2, thread.y + thread.height / 2)} y={3.6}>
              {thread.held.name}
            </text>
          ) : null}
        </g>
      ))}
    </>
  )
}

export function Head({ x, y, title, sub, large = false }: { x: number; y: number; title: string; sub: string; large?: boolean }) {
  return (
    <>
      <text className={large ? css.head : css.headSmall} x={x} y={y + 22}>
        {title}
      </text>
      {sub ? (
        <text className={css.small} x={x} y={y + 40}>
          {sub}
        </text>
      ) : null}
    </>
  )
}
