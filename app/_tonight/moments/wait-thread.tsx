'use client'

import { useNight } from '#app/_tonight/use-night.ts'
import { waitFreeText } from '#app/_words/chance.ts'
import { clockText } from '#app/_words/clock.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import css from './moments.module.css'

type Served = RunningOrder['courses'][number]

/** Beyond what is drawn, so that the end of the thread is seen. */
const TAIL = 0.2
const FAR_MS = 90 * 60_000

/** How long a course can wait: free, then at a price, then not at all; in words and as a thread. */
export function WaitThread({ served }: { readonly served: Served }) {
  const { names, evening, nowMs } = useNight()
  const words = waitFreeText(served, names, evening.zone)
  if (words === null || served.waitFreeUntil === null) return null
  const from = Math.min(nowMs, msOfInstant(served.toTable))
  const free = Math.max(from, msOfInstant(served.waitFreeUntil))
  const until = served.waitBeyond?.until ?? null
  const beyond = until === null ? null : Math.min(msOfInstant(until), free + FAR_MS)
  const end = (beyond ?? free) + ((beyond ?? free) - from + 5 * 60_000) * TAIL
  const at = (ms: number) => `${(100 * (ms - from)) / (end - from)}%`
  return (
    <div className={css.wait}>
      <p className={css.waitWords}>{words}</p>
      <div className={css.thread} aria-hidden="true">
        <span className={css.free} style={{ left: 0, width: at(free) }} />
        {beyond === null ? null : (
          <span className={css.dear} style={{ left: at(free), width: `calc(${at(beyond)} - ${at(free)})` }} />
        )}
        <span className={css.over} style={{ left: at(beyond ?? free), right: 0 }} />
        <span className={css.candle} style={{ left: at(nowMs) }} />
        <small className={css.tick} style={{ left: at(free) }}>
          {clockText(free, evening.zone)}
        </small>
      </div>
    </div>
  )
}
