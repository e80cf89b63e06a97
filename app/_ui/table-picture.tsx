import css from './plate.module.css'
import { type DishColour, PlateShape } from './plate.tsx'
import { seatsAround } from './seats.ts'

interface Props {
  readonly width: number
  readonly height: number
  readonly covers: number
  /** Who is known by name, in the order of their seats. */
  readonly people: readonly string[]
  readonly colour: DishColour | null
  /** Empty when the words beside the picture say it. */
  readonly label: string
  readonly names?: boolean
  /** What it lies on: the night, or the room. */
  readonly ground?: 'night' | 'page'
}

const NAME_INK = { night: 'var(--on-night)', page: 'var(--ink)' } as const

/** The table seen from above, with its people and its plates. */
export function TablePicture({ width, height, covers, people, colour, label, names = false, ground = 'night' }: Props) {
  const margin = names ? 64 : 17
  const box = {
    x: margin + (names ? 12 : 0),
    y: names ? 48 : 17,
    width: width - 2 * margin - (names ? 24 : 0),
    height: height - (names ? 96 : 34),
  }
  const seats = seatsAround(covers, box)
  const large = box.width > 240
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
      aria-hidden={label === ''}
    >
      {seats.map((seat, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place
        <ellipse key={index} className={css.chair} cx={seat.chair.x} cy={seat.chair.y} rx={seat.chair.rx} ry={seat.chair.ry} />
      ))}
      <rect className={css.cloth} {...box} rx={22} />
      <rect className={css.hem} x={box.x + 5} y={box.y + 5} width={box.width - 10} height={box.height - 10} rx={17} />
      {large
        ? [0.38, 0.62].map((at) => (
            <g key={at} transform={`translate(${box.x + box.width * at} ${box.y + box.height / 2})`}>
              <circle className={css.glow} r={30} />
              <circle className={css.holder} cy={3} r={16} />
              <path className={css.flame} d="M.9-22C5.4-14 7.4-9 7.4-4A7.4 8 0 0 1-7.4-4C-7.4-9-2.4-14 .9-22z" />
              <path className={css.wick} d="M0-5V5" />
            </g>
          ))
        : null}
      {seats.map((seat, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place
        <g key={index}>
          <PlateShape x={seat.plate.x} y={seat.plate.y} r={seat.plate.r} colour={colour} />
          {names && people[index] ? (
            <text className={css.who} x={seat.name.x} y={seat.name.y} textAnchor={seat.name.anchor} fill={NAME_INK[ground]}>
              {people[index].length > 11 ? `${people[index].slice(0, 10)}…` : people[index]}
            </text>
          ) : null}
        </g>
      ))}
    </svg>
  )
}
