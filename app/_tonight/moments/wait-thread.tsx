'use client'

import { useNight } from '#app/_tonight/use-night.ts'
import { waitFreeText } from '#app/_words/chance.ts'
import { clockText, sentence } from '#app/_words/clock.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import css from './moments.module.css'

type Served = RunningOrder['courses'][number]

/** Beyond what is drawn, so that the end of the thread is seen. */
const TAIL = 0.2
const FAR_MS = 90 * 60_000

/** Until a course is due, and how long it can wait then: free, at a price, not at all; in words and as a thread. */
export function WaitThread({ served }: { readonly served: Served }) {
  const { names, evening, nowMs } = useNight()
  const words = waitFreeText(served, names, evening.zone)
  if (words === null || served.waitFreeUntil === null) return null
  const due = msOfInstant(served.toTable)
  const from = Math.min(nowMs, due)
  const free = Math.max(due, msOfInstant(served.waitFreeUntil))
  const until = served.waitBeyond?.until ?? null
  const beyond = until === null ? null : Math.min(msOfInstant(until), free + FAR_MS)
  const end = (beyond ?? free) + ((beyond ?? free) - from + 5 * 60_000) * TAIL
  const at = (ms: number) => `${(100 * (ms - from)) / (end - from)}%`
  return (
    <div className={css.wait}>
      <p className={css.waitWords}>
        {sentence(names.courseName(served.course))} is due at {clockText(due, evening.zone)}. {words}
      </p>
      <div className={css.thread} aria-hidden="true">
        <span className={css.due} style={{ left: 0, width: at(due) }} />
        <span className={css.free} style={{ left: at(due), width: `calc(${at(free)} - ${at(due)})` }} />
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
