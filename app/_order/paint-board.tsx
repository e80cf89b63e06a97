import { memo } from 'react'
import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'

/** The bare board, the cloth on it, and the hours: what lies below everything (drawing rules 2 and 3). */
export const PaintBoard = memo(function PaintBoard({ picture }: { readonly picture: Picture }) {
  const { board } = picture.columns
  return (
    <>
      <rect className={css.board} x={board.x} y={0} width={board.width} height={picture.height} rx={14} />
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
      {picture.courses.map((row) => (
        <text className={css.courseClock} key={row.id} x={43} y={row.y + 5}>
          {row.clock}
        </text>
      ))}
    </>
  )
})

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
