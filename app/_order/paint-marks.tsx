import { memo } from 'react'
import type { Mark } from './picture/picture.ts'
import css from './picture.module.css'

interface Props {
  readonly mark: Mark
  readonly isChosen?: boolean
  /** The id of the pattern of rungs. */
  readonly rungs: string
}

/** What a cook does, in their lane: satin bar, ladder, dots or knot (drawing rule 5). */
export const PaintMark = memo(
  function PaintMark({ mark, isChosen = false, rungs }: Props) {
    const tone = isChosen ? css.chosen : mark.doing.cue.state === 'done' ? css.done : ''
    return (
      <g className={tone} data-glides={isChosen ? undefined : `${mark.key} mark`}>
        <MarkShape mark={mark} rungs={rungs} />
      </g>
    )
  },
  (a, b) => a.isChosen === b.isChosen && a.rungs === b.rungs && isSameMark(a.mark, b.mark),
)

const isSameMark = (a: Mark, b: Mark): boolean =>
  a.x === b.x &&
  a.y === b.y &&
  a.height === b.height &&
  a.key === b.key &&
  a.doing.mark === b.doing.mark &&
  a.doing.cue.state === b.doing.cue.state

function MarkShape({ mark: { doing, x, y, height }, rungs }: { readonly mark: Mark; readonly rungs: string }) {
  switch (doing.mark) {
    case 'bar':
      return <rect className={css.bar} x={x - 3.6} y={y} width={7.2} height={height} rx={3.4} />
    case 'ladder':
      return (
        <>
          <rect className={css.ladder} x={x - 3.2} y={y + 0.7} width={6.4} height={Math.max(5, height - 1.4)} rx={3} />
          {height > 9 ? <rect x={x - 3} y={y + 3} width={6} height={height - 6} fill={`url(#${rungs})`} /> : null}
        </>
      )
    case 'dots':
      return <path className={css.dots} d={`M${x} ${y + 1}V${y + height - 1}`} />
    case 'knot':
      return <circle className={css.knot} cx={x} cy={y + 4.2} r={4.2} />
  }
}
