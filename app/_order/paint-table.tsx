import { memo } from 'react'
import { PlateShape } from '#app/_ui/plate.tsx'
import { minutesText } from '#app/_words/duration.ts'
import type { Shape } from './picture/columns.ts'
import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'

const LONG_WAIT = 15

const waitText = (minutes: number, shape: Shape): string => {
  const wait =
    minutes < 0.5 ? 'no wait' : minutes > LONG_WAIT ? `a long wait, ${minutesText(minutes)}` : `wait ${minutesText(minutes)}`
  return shape === 'wide' ? `plates off, then ${wait}` : wait.replace(/^a long wait/, 'long')
}

interface Props {
  readonly picture: Picture
  readonly guestsFrom: string
}

/** What is written and served on the table's column, and the course lines across everything (drawing rule 4). */
export const PaintTable = memo(function PaintTable({ picture, guestsFrom }: Props) {
  const { shape } = picture
  const restUp = !picture.labels.some((label) => label.doing.from >= picture.frame.last)
  const { table, board } = picture.columns
  const x = table.x + table.width / 2
  const right = shape === 'wide' ? picture.width - 4 : board.x + board.width
  const lead = shape === 'wide' ? 18 : 17
  const first = picture.courses[0]
  const come = picture.scale.y(picture.frame.guestsFrom)
  const near = first && Math.abs(first.y - come) < 36 ? first.y - (shape === 'wide' ? 34 : 44) : come
  const guests = Math.max(near, Math.min(come, picture.laid) + (shape === 'wide' ? 24 : 20))
  const guestPlates = first && first.y - guests > 56 ? first.plates : []
  return (
    <>
      {picture.laid > 9 && guests - picture.laid > 40 && shape === 'wide' ? (
        <text className={css.small} x={x} y={picture.laid + 22}>
          the table is laid
        </text>
      ) : null}
      {shape === 'wide' ? (
        <>
          <text className={css.courseName} x={x} y={guests + 6}>
            Guests from {guestsFrom}
          </text>
          {guestPlates.map((plate) => (
            <circle className={css.seat} key={plate.x} cx={plate.x} cy={guests + 22} r={4.5} />
          ))}
        </>
      ) : (
        <>
          <text className={css.small} x={x} y={guests + 4}>
            guests
          </text>
          <text className={css.small} x={x} y={guests + 20}>
            from {guestsFrom}
          </text>
        </>
      )}
      {picture.courses.map((row, index) => {
        const isLast = index === picture.courses.length - 1
        return (
          <g key={row.id}>
            <path className={css.line} d={`M48 ${row.y}H${right}`} />
            {row.plates.map((plate) => (
              <PlateShape key={plate.x} x={plate.x} y={row.y} r={plate.r} colour={row.colour} />
            ))}
            {row.cookPlates.map((plate) => (
              <PlateShape key={plate.x} x={plate.x} y={row.y} r={plate.r} colour={row.colour} />
            ))}
            {row.name.map((line, at) => (
              <text className={css.courseName} key={line} x={x} y={row.y + 34 + at * lead}>
                {line}
              </text>
            ))}
            {row.off ? (
              <>
                <path className={css.off} d={`M${table.x + 14} ${row.off.y}H${table.x + table.width - 14}`} />
                <text className={row.off.minutes > LONG_WAIT ? css.long : css.small} x={x} y={row.off.y + 15}>
                  {waitText(row.off.minutes, shape)}
                </text>
              </>
            ) : null}
            {isLast && restUp && shape === 'wide' ? (
              <text className={css.small} x={x} y={row.y + 34 + row.name.length * lead}>
                nobody gets up again
              </text>
            ) : null}
          </g>
        )
      })}
    </>
  )
})
