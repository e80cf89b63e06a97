'use client'

import { useMemo, useState } from 'react'
import { openDrafts } from '#app/_sync/drafts.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { DraftsProvider } from '#app/_ui/drafts.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, listText, sentence } from '#app/_words/clock.ts'
import type { InvitationFacts } from '#app/_words/invitation.ts'
import type { GuestTable } from '#server/guests/table.ts'
import { AddGuest } from './add-guest.tsx'
import { atTable } from './at-table.ts'
import { CoversLine } from './covers-line.tsx'
import { GuestList } from './guest-list.tsx'
import css from './guests.module.css'
import { Invitations } from './invitations.tsx'
import { type Made, MadeLink } from './made-link.tsx'
import { NewInvitation } from './new-invitation.tsx'
import { RepliesWords } from './replies-words.tsx'
import { SeatsPicture } from './seats-picture.tsx'
import { useGuests } from './use-guests.ts'

/** Who comes and who can eat what, for hosts. Nothing of it is kept in the browser, not even what is half typed. */
export function GuestsScreen({ eveningId, given }: { readonly eveningId: string; readonly given: GuestTable }) {
  const [drafts] = useState(() => openDrafts(pageShelf(), ''))
  return (
    <DraftsProvider drafts={drafts}>
      <Screen eveningId={eveningId} given={given} />
    </DraftsProvider>
  )
}

function Screen({ eveningId, given }: { readonly eveningId: string; readonly given: GuestTable }) {
  const { evening } = usePlan()
  const desk = useGuests(eveningId, given)
  const [open, setOpen] = useState<string | null>(null)
  const [made, setMade] = useState<Made | null>(null)
  const { guests, replies } = desk.table
  const table = useMemo(() => atTable(guests, evening.cooks), [guests, evening.cooks])
  const facts: InvitationFacts = {
    name: evening.name,
    date: evening.date,
    from: evening.guestsFrom.time,
    sitDown: evening.sitDown.time,
    hosts: listText(evening.cooks.filter((cook) => cook.host).map((cook) => cook.name)),
    place: replies.place,
  }
  const awaited = guests.filter((guest) => guest.reply === 'waiting').length
  return (
    <main id="main" className={css.main}>
      <Ready />
      {desk.stale ? <Notice>{desk.stale}</Notice> : null}
      <div className={css.top}>
        <div className={css.side}>
          <h1>Guests</h1>
          <p className={css.lead}>
            {sentence(countOf(guests.length, 'guest'))},{' '}
            {awaited === 0 ? 'all have answered' : `${countOf(awaited, 'has', 'have')} not answered`}
          </p>
          <SeatsPicture places={table.places} covers={evening.covers} />
          <CoversLine table={table} />
        </div>
      </div>
      <div className={css.pair}>
        <section className={css.section} aria-labelledby="who">
          <h2 id="who">Who comes</h2>
          <AddGuest desk={desk} onAdded={() => undefined} />
          <GuestList desk={desk} open={open} onOpen={setOpen} />
        </section>
        <section className={css.section} aria-labelledby="links">
          <h2 id="links">Links to answer by</h2>
          <p className={css.quiet}>One for each guest or household. They need no account, and can change what they answered.</p>
          {made ? (
            <MadeLink made={made} facts={facts} onDone={() => setMade(null)} />
          ) : (
            <NewInvitation desk={desk} onMade={setMade} />
          )}
          <Invitations desk={desk} facts={facts} onMade={setMade} />
          <RepliesWords desk={desk} />
        </section>
      </div>
    </main>
  )
}
