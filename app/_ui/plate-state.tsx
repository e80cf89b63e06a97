import css from './plate.module.css'
import { type DishColour, dishFill } from './plate.tsx'

/** How a dish stands for somebody. Each is a shape of its own, never a colour alone. */
export type PlateStanding = 'fits' | 'with-change' | 'does-not' | 'not-confirmed'

interface Props {
  readonly standing: PlateStanding
  readonly colour: DishColour
  readonly size: number
  /** Somebody's first letter on the rim: a severe allergy. */
  readonly severe?: string | undefined
}

const R = 20

/** A full plate, half a plate, an empty ring with a bar, or a dashed ring with a question mark. The words stand beside it. */
export function PlateState({ standing, colour, size, severe }: Props) {
  return (
    <svg width={size} height={size} viewBox="0 0 46 46" aria-hidden="true">
      {shapes[standing](dishFill(colour))}
      {severe === undefined ? null : (
        <g transform="rotate(9 37 9)">
          <rect className={css.tag} x={29} y={1} width={16} height={16} rx={4.5} />
          <text className={css.tagLetter} x={37} y={13.2} textAnchor="middle">
            {severe}
          </text>
        </g>
      )}
    </svg>
  )
}

const empty = (
  <>
    <circle className={css.plate} cx={23} cy={23} r={R} />
    <circle className={css.rim} cx={23} cy={23} r={R * 0.68} />
  </>
)

const shapes: Readonly<Record<PlateStanding, (fill: string | undefined) => React.ReactNode>> = {
  fits: (fill) => (
    <>
      {empty}
      <circle className={fill} cx={23} cy={23} r={10.8} />
    </>
  ),
  'with-change': (fill) => (
    <>
      {empty}
      <path className={fill} d="M23 12.2a10.8 10.8 0 0 1 0 21.6z" />
      <path className={css.half} d="M23 12.2a10.8 10.8 0 0 0 0 21.6z" />
    </>
  ),
  'does-not': () => (
    <>
      <circle className={css.none} cx={23} cy={23} r={R} />
      <path className={css.bar} d="M15.4 23h15.2" />
    </>
  ),
  'not-confirmed': () => (
    <>
      <circle className={css.open} cx={23} cy={23} r={R} />
      <text className={css.ask} x={23} y={30} textAnchor="middle">
        ?
      </text>
    </>
  ),
}
