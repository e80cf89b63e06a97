'use client'

import { TablePicture } from '#app/_ui/table-picture.tsx'
import { clockText } from '#app/_words/clock.ts'
import { taskText } from '#app/_words/night-call.ts'
import type { CookNow } from '#lib/night/board.ts'
import { courseColour } from './facts.ts'
import css from './mine.module.css'
import { Undo } from './undo.tsx'
import { useChanged } from './use-changes.ts'
import { useNight } from './use-night.ts'

/** A cook with nothing to do sees the table, not an empty list: until when they may sit, and what calls them then. */
export function Free({ one, large = false }: { readonly one: CookNow; readonly large?: boolean }) {
  const { evening, names, last } = useNight()
  const { next } = one
  const changed = useChanged(next?.task.step ?? '')
  const until = next ? ` until ${clockText(next.at, evening.zone)}` : ''
  const head = !one.isHere ? 'Not here' : one.isAtTable ? `Sit${until}` : next ? `Free${until}` : 'Nothing more for you'
  return (
    <section className={css.free} aria-label={`${names.cookName(one.cook)}, now`} data-large={large || undefined}>
      <p className={css.whose}>{names.cookName(one.cook)}</p>
      <h1 data-changed={changed || undefined}>{head}</h1>
      {last ? (
        <Undo />
      ) : (
        <p className={css.sub}>
          {next ? `Nothing needs you now. Then ${taskText(next.task, names)}.` : 'Nothing needs you now.'}
        </p>
      )}
      {one.isAtTable ? <TableNow /> : null}
    </section>
  )
}

/** The table as it is now, with the cooks who eat at it by name; guests' names are their hosts' alone. */
export function TableNow() {
  const { evening, board } = useNight()
  const people = evening.cooks.filter(({ eats }) => eats).map(({ name }) => name)
  return (
    <div className={css.table}>
      <TablePicture
        width={366}
        height={272}
        covers={evening.covers}
        people={people}
        colour={courseColour(evening, board)}
        label=""
        names
        ground="page"
      />
    </div>
  )
}
