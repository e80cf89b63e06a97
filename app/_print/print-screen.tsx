'use client'

import { CalendarPart } from '#app/_calendar/calendar-part.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Link } from '#app/_ui/link.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { SHEETS, sheetAbout, sheetNames } from '#app/_words/print.ts'
import { homesOf } from '#lib/potluck/home-sheet.ts'
import type { FeedState } from '#server/calendar/feed.ts'
import css from './print.module.css'
import { Sketch } from './sketch.tsx'

/** What there is of the evening on paper, and in a calendar. */
export function PrintScreen({ eveningId, feed }: { readonly eveningId: string; readonly feed: FeedState }) {
  const { evening } = usePlan()
  const sheets = SHEETS.filter((kind) => kind !== 'homes' || homesOf(evening).length > 0)
  return (
    <main id="main" className={css.main}>
      <Ready />
      <div className={css.bar}>
        <h1>On paper and in your calendar</h1>
      </div>
      <ul className={css.choice}>
        {sheets.map((kind) => (
          <li key={kind}>
            <Link href={`/evenings/${eveningId}/print/${kind}`} className={css.offer}>
              <Sketch kind={kind} />
              <b>{sheetNames[kind]}</b>
            </Link>
            <p>{sheetAbout[kind]}</p>
          </li>
        ))}
      </ul>
      <CalendarPart eveningId={eveningId} feed={feed} />
    </main>
  )
}
