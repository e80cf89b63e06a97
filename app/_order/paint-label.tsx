import { memo } from 'react'
import type { Label } from './picture/labels.ts'
import type { Line } from './picture/lines.ts'
import css from './picture.module.css'

/** The cue that a line belongs to: "step.batch". */
export const cueKey = (label: Label): string => `${label.doing.cue.step}.${label.doing.cue.batch}`

interface LabelProps {
  readonly label: Label
  readonly line: Line
  readonly isClash: boolean
  /** It has just moved. */
  readonly isMoved: boolean
}

/** One line of a cook: clock and words, with what its state lays behind it (drawing rules 6, 8, 9, 10). */
export const PaintLabel = memo(
  function PaintLabel({ label, line, isClash, isMoved }: LabelProps) {
    const { state } = label.doing.cue
    const wash = isClash ? css.clashWash : state === 'running' ? css.runningWash : null
    const tone = isClash ? css.clash : state === 'done' ? css.done : state === 'running' ? css.running : ''
    const { leader, x } = label
    return (
      <g className={`${css.label} ${tone}`} data-glides={label.key}>
        {leader === null ? null : <path className={css.leader} d={`M${x - 8} ${leader + 4}L${x - 3} ${label.y - 4}`} />}
        {wash ? <Wash label={label} tone={wash} /> : null}
        <Words label={label} line={line} halo={wash === null} />
        {isMoved ? <Under label={label} line={line} tone={css.moved} /> : null}
      </g>
    )
  },
  (a, b) => a.line === b.line && a.isClash === b.isClash && a.isMoved === b.isMoved && isSameLabel(a.label, b.label),
)

/** The chosen line, over itself. */
export function PaintChosen({ label, line }: { readonly label: Label; readonly line: Line }) {
  return (
    <g className={`${css.label} ${css.chosen}`}>
      <Wash label={label} tone={css.patch} />
      <Words label={label} line={line} halo={false} />
    </g>
  )
}

/** Under another line of the chosen cue. */
export function PaintKin({ label, line }: { readonly label: Label; readonly line: Line }) {
  return <Under label={label} line={line} tone={css.kin} />
}

function Wash({ label: { box }, tone }: { readonly label: Label; readonly tone: string | undefined }) {
  return <rect className={tone} x={box.x - 5} y={box.y - 1} width={box.width + 10} height={box.height + 3} rx={5} />
}

function Words({ label, line, halo }: { readonly label: Label; readonly line: Line; readonly halo: boolean }) {
  return (
    <text className={halo ? css.halo : undefined} style={{ fontSize: line.size }} x={label.x} y={label.y}>
      <tspan className={css.clock}>{label.clock}</tspan>
      {label.words.map((words, index) => (
        <tspan key={words} x={label.x + line.clock} dy={index * line.lead}>
          {words}
        </tspan>
      ))}
    </text>
  )
}

function Under({ label, line, tone }: { readonly label: Label; readonly line: Line; readonly tone: string | undefined }) {
  const y = label.y + (label.words.length - 1) * line.lead + 3.5
  return <path className={tone} d={`M${label.x + line.clock} ${y}h${Math.max(12, label.box.width - line.clock)}`} />
}

/** Whether two lines are painted alike: a new order makes all of them anew, and moves a few. */
export const isSameLabel = (a: Label, b: Label): boolean =>
  a.key === b.key &&
  a.x === b.x &&
  a.y === b.y &&
  a.clock === b.clock &&
  a.leader === b.leader &&
  a.column === b.column &&
  a.box.y === b.box.y &&
  a.box.width === b.box.width &&
  a.box.height === b.box.height &&
  a.doing.cue.state === b.doing.cue.state &&
  a.doing.from === b.doing.from &&
  a.doing.words === b.doing.words &&
  a.doing.tail === b.doing.tail &&
  a.words.join('\n') === b.words.join('\n')
