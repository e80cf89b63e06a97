'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { remedyPrice, remedyText } from '#app/_words/clash.ts'
import type { Names } from '#app/_words/names.ts'
import type { Clash, Remedy } from '#lib/domain/running-order.ts'
import css from './clashes.module.css'
import { useLook } from './look.tsx'
import { useWaysOut } from './use-ways-out.ts'

interface Props {
  readonly way: Remedy
  readonly clash: Clash
  readonly names: Names
  /** What the guests would notice least. */
  readonly isFirst: boolean
}

/** One way out with its price: take it, or see first what moves. */
export function WayOut({ way, clash, names, isFirst }: Props) {
  const { evening } = usePlan()
  const { look, leave } = useLook()
  const { take, barred, lookFor, lookAtWay } = useWaysOut()
  const words = remedyText(way, names, evening)
  const why = barred(way)
  const isLookedAt = look?.key === lookFor(way, clash).key
  return (
    <li>
      <p className={css.way}>
        <b>{words}.</b> {[way.said, remedyPrice(way)].filter(Boolean).join(' ')}
      </p>
      <div className={css.does}>
        {why === null ? (
          <Button
            tone={isFirst ? 'full' : 'soft'}
            aria-label={`Take this way out: ${words}`}
            onClick={() => {
              leave()
              take(way, clash)
            }}
          >
            Take
          </Button>
        ) : (
          <span className={css.barred}>{why}</span>
        )}
        <Button
          tone="word"
          aria-pressed={isLookedAt}
          aria-label={`See what moves: ${words}`}
          onClick={() => (isLookedAt ? leave() : lookAtWay(way, clash))}
        >
          {isLookedAt ? 'leave it' : 'see what moves'}
        </Button>
      </div>
    </li>
  )
}
