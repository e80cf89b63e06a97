'use client'

import { clashText, clashTitle, remedyPrice, remedyText } from '#app/_words/clash.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './clashes.module.css'

/** What no order can keep: each clash in words, with the ways out that were tried. */
export function Clashes({
  order,
  names,
  evening,
  isEarly,
}: {
  readonly order: RunningOrder
  readonly names: Names
  readonly evening: Evening
  /** A better order is being looked for: what clashes may be gone in a second. */
  readonly isEarly: boolean
}) {
  if (order.clashes.length === 0) return null
  if (isEarly) return <p className={css.early}>Something does not fit yet. A better order is being looked for.</p>
  return (
    <ul className={css.clashes} aria-label="Clashes">
      {order.clashes.map((clash) => (
        <li className={css.clash} key={`${clash.kind}.${clash.from}.${clash.steps.join('.')}.${clash.dish}.${clash.course}`}>
          <h2>{clashTitle(clash, order.zone)}</h2>
          <p>{clashText(clash, names, order.cues)}</p>
          {clash.ways.length > 0 ? (
            <>
              <h3>{clash.ways.length === 1 ? 'A way out' : 'Ways out'}</h3>
              <ul className={css.ways}>
                {clash.ways.map((way) => (
                  <li key={`${way.kind}.${remedyText(way, names, evening)}`}>
                    <b>{remedyText(way, names, evening)}.</b> {[way.said, remedyPrice(way)].filter(Boolean).join(' ')}
                  </li>
                ))}
              </ul>
            </>
          ) : null}
        </li>
      ))}
    </ul>
  )
}
