import css from '#app/_ui/plate.module.css'
import { PlateShape } from '#app/_ui/plate.tsx'
import { seatsAround } from '#app/_ui/seats.ts'
import { listText } from '#app/_words/clock.ts'
import type { Place } from './at-table.ts'
import own from './seats.module.css'

const [WIDTH, HEIGHT] = [388, 262]
const BOX = { x: 62, y: 54, width: 264, height: 154 }

const said = (places: readonly Place[]): string => {
  const awaited = places.filter((place) => place.standing !== 'comes').map((place) => place.name)
  return `The table from above: ${listText(places.map((place) => place.name)) || 'nobody yet'}${
    awaited.length > 0 ? `. Not sure: ${listText(awaited)}` : ''
  }`
}

const short = (name: string): string => (name.length > 9 ? `${name.slice(0, 8)}…` : name)

/** The table from above with who sits at it; whoever has not said yes has a dashed chair and a question on the plate. */
export function SeatsPicture({ places, covers }: { readonly places: readonly Place[]; readonly covers: number }) {
  const seats = seatsAround(Math.max(covers, places.length), BOX)
  return (
    <svg className={own.picture} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={said(places)}>
      {seats.map((seat, index) => (
        <ellipse
          // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place
          key={index}
          className={places[index]?.standing === 'comes' ? own.chair : own.empty}
          cx={seat.chair.x}
          cy={seat.chair.y}
          rx={seat.chair.rx}
          ry={seat.chair.ry}
        />
      ))}
      <rect className={css.cloth} {...BOX} rx={22} />
      <rect className={css.hem} x={BOX.x + 5} y={BOX.y + 5} width={BOX.width - 10} height={BOX.height - 10} rx={17} />
      {seats.map((seat, index) => {
        const place = places[index]
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a seat is its place
          <g key={index}>
            {place === undefined || place.standing === 'comes' ? (
              <PlateShape x={seat.plate.x} y={seat.plate.y} r={seat.plate.r} colour={null} />
            ) : (
              <>
                <circle className={css.open} cx={seat.plate.x} cy={seat.plate.y} r={seat.plate.r} />
                <text className={css.ask} x={seat.plate.x} y={seat.plate.y + 6} textAnchor="middle">
                  ?
                </text>
              </>
            )}
            {place ? (
              <text className={own.name} x={seat.name.x} y={seat.name.y} textAnchor={seat.name.anchor}>
                {short(place.name)}
              </text>
            ) : null}
          </g>
        )
      })}
    </svg>
  )
}
