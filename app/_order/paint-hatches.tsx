import type { Hatch } from './picture/kit.ts'
import css from './picture.module.css'

/** Over exactly the kit and the minutes that clash, below what lies in it (drawing rule 8). */
export function PaintHatches({ hatches, pattern }: { readonly hatches: readonly Hatch[]; readonly pattern: string }) {
  return hatches.map(({ key, box }) => <rect className={css.hatch} key={key} {...box} rx={5} fill={`url(#${pattern})`} />)
}

/** The word, above all that lies in it: nothing is told by colour alone. Narrow kit has it beside. */
export function PaintClashWords({ hatches }: { readonly hatches: readonly Hatch[] }) {
  return hatches.map(({ key, box }) => {
    const x = box.width > 50 ? box.x + box.width - 46 : box.x - 46
    return (
      <g key={key}>
        <rect className={css.clashPill} x={x} y={box.y + 3} width={42} height={18} rx={5} />
        <text className={css.clashWord} x={x + 21} y={box.y + 16.2}>
          clash
        </text>
      </g>
    )
  })
}
