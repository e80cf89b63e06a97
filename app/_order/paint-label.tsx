import type { Label } from './picture/labels.ts'
import css from './picture.module.css'

/** The cue that a line belongs to: "step.batch". */
export const cueKey = (label: Label): string => `${label.doing.cue.step}.${label.doing.cue.batch}`

interface LabelProps {
  readonly label: Label
  readonly chosen: Label | null
  readonly clash: boolean
  readonly clockWidth: number
  readonly lead: number
}

/** One line of a cook: clock and words, with what its state lays behind it (drawing rules 6, 8, 9, 10). */
export function PaintLabel({ label, chosen, clash, clockWidth, lead }: LabelProps) {
  const isChosen = chosen?.key === label.key
  const isKin = !isChosen && chosen !== null && cueKey(chosen) === cueKey(label)
  const { state } = label.doing.cue
  const wash = isChosen ? css.patch : clash ? css.clashWash : state === 'running' ? css.runningWash : null
  const tone = isChosen ? css.chosen : clash ? css.clash : state === 'done' ? css.done : state === 'running' ? css.running : ''
  return (
    <g className={`${css.label} ${tone}`}>
      {label.leader === null ? null : (
        <path className={css.leader} d={`M${label.x - 8} ${label.leader + 4}L${label.x - 3} ${label.y - 4}`} />
      )}
      {wash ? (
        <rect
          className={wash}
          x={label.box.x - 5}
          y={label.box.y - 1}
          width={label.box.width + 10}
          height={label.box.height + 3}
          rx={5}
        />
      ) : null}
      <text x={label.x} y={label.y}>
        <tspan className={css.clock}>{label.clock}</tspan>
        {label.words.map((words, index) => (
          <tspan key={words} x={label.x + clockWidth} dy={index * lead}>
            {words}
          </tspan>
        ))}
      </text>
      {isKin ? (
        <path className={css.kin} d={`M${label.x + clockWidth} ${label.y + 3.5}h${Math.max(12, label.box.width - clockWidth)}`} />
      ) : null}
    </g>
  )
}
