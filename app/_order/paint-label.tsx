import { memo } from 'react'
import type { Label } from './picture/labels.ts'
import type { Line } from './picture/lines.ts'
import css from './picture.module.css'

/** The cue that a line belongs to: "step.batch". */
export const cueKey = (label: Label): string => `${label.doing.cue.step}.${label.doing.cue.batch}`

/** What lies behind a line: it is chosen, another touch of the chosen step, in a clash, just moved. */
export interface Tone {
  readonly isChosen: boolean
  readonly isKin: boolean
  readonly isClash: boolean
  readonly isMoved: boolean
}

interface LabelProps extends Tone {
  readonly label: Label
  readonly line: Line
}

/** One line of a cook: clock and words, with what its state lays behind it (drawing rules 6, 8, 9, 10). */
export const PaintLabel = memo(function PaintLabel({ label, line, isChosen, isKin, isClash, isMoved }: LabelProps) {
  const { state } = label.doing.cue
  const wash = isChosen ? css.patch : isClash ? css.clashWash : state === 'running' ? css.runningWash : null
  const tone = isChosen ? css.chosen : isClash ? css.clash : state === 'done' ? css.done : state === 'running' ? css.running : ''
  const { box, leader } = label
  const under = label.y - box.y + (label.words.length - 1) * line.lead + 3.5
  return (
    <g className={`${css.label} ${css.glides} ${tone}`} style={{ transform: `translate(${label.x}px, ${box.y}px)` }}>
      {leader === null ? null : <path className={css.leader} d={`M-8 ${leader - box.y + 4}L-3 ${label.y - box.y - 4}`} />}
      {wash ? <rect className={wash} x={-5} y={-1} width={box.width + 10} height={box.height + 3} rx={5} /> : null}
      <text className={wash ? undefined : css.halo} style={{ fontSize: line.size }} y={label.y - box.y}>
        <tspan className={css.clock}>{label.clock}</tspan>
        {label.words.map((words, index) => (
          <tspan key={words} x={line.clock} dy={index * line.lead}>
            {words}
          </tspan>
        ))}
      </text>
      {isKin || isMoved ? (
        <path className={isKin ? css.kin : css.moved} d={`M${line.clock} ${under}h${Math.max(12, box.width - line.clock)}`} />
      ) : null}
    </g>
  )
})
