import type { Picture } from './picture/picture.ts'
import css from './picture.module.css'

/** Now: a saffron line with a brown under-edge, the clock, a candle on the table (drawing rule 10). */
export function NowLine({ y, picture, clock }: { y: number; picture: Picture; clock: string }) {
  const { table } = picture.columns
  return (
    <>
      <path className={css.now} d={`M50 ${y}H${picture.width - 2}`} />
      <path className={css.nowUnder} d={`M50 ${y + 1.7}H${picture.width - 2}`} />
      <rect className={css.nowPill} x={0} y={y - 11} width={50} height={22} rx={11} />
      <text className={css.nowClock} x={25} y={y + 4.6}>
        {clock}
      </text>
      <g transform={`translate(${table.x + table.width - 30} ${y - 7}) scale(1.35)`}>
        <path className={css.wick} d="M0 3.5V8" />
        <path className={css.flame} d="M.9-12.5C3.4-8.4 4.5-5 4.5-1.2A4.5 5 0 0 1-4.5-1.2C-4.5-4.6-1.5-7.6.9-12.5z" />
      </g>
    </>
  )
}
