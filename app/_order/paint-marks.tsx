import type { Mark } from './picture/picture.ts'
import css from './picture.module.css'

const rungs = (mark: Mark): number[] => {
  const rows: number[] = []
  for (let y = mark.y + 4.5; y < mark.y + mark.height - 2.5; y += 4) rows.push(y)
  return rows
}

/** What a cook does, in their lane: satin bar, ladder, dots or knot (drawing rule 5). */
export function PaintMark({ mark }: { readonly mark: Mark }) {
  switch (mark.doing.mark) {
    case 'bar':
      return <rect className={css.bar} x={mark.x - 3.6} y={mark.y} width={7.2} height={mark.height} rx={3.4} />
    case 'ladder':
      return (
        <>
          <rect
            className={css.ladder}
            x={mark.x - 3.2}
            y={mark.y + 0.7}
            width={6.4}
            height={Math.max(5, mark.height - 1.4)}
            rx={3}
          />
          {rungs(mark).map((y) => (
            <path className={css.rung} key={y} d={`M${mark.x - 3} ${y}h6`} />
          ))}
        </>
      )
    case 'dots':
      return <path className={css.dots} d={`M${mark.x} ${mark.y + 1}V${mark.y + mark.height - 1}`} />
    case 'knot':
      return <circle className={css.knot} cx={mark.x} cy={mark.y + 4.2} r={4.2} />
  }
}
