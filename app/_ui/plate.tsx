import css from './plate.module.css'

export type DishColour = 1 | 2 | 3 | 4
const fills = { 1: css.d1, 2: css.d2, 3: css.d3, 4: css.d4 } as const

/** The class that fills a shape with the dish colour. */
export const dishFill = (colour: DishColour): string | undefined => fills[colour]

/** The dish colour of the course at this place of the menu. */
export const dishColour = (index: number): DishColour => {
  const place = ((index % 4) + 4) % 4
  return place === 0 ? 1 : place === 1 ? 2 : place === 2 ? 3 : 4
}

/** A plate from above; without a colour it is empty. */
export function PlateShape({ x, y, r, colour }: { x: number; y: number; r: number; colour: DishColour | null }) {
  return (
    <>
      <circle className={css.plate} cx={x} cy={y} r={r} />
      <circle className={css.rim} cx={x} cy={y} r={r * 0.68} />
      {colour ? <circle className={fills[colour]} cx={x} cy={y} r={r * 0.54} /> : null}
    </>
  )
}

export function Plate({ size, colour }: { readonly size: number; readonly colour: DishColour | null }) {
  return (
    <svg width={size} height={size} viewBox={`0 0 ${size} ${size}`} aria-hidden="true">
      <PlateShape x={size / 2} y={size / 2} r={size / 2 - 2} colour={colour} />
    </svg>
  )
}
