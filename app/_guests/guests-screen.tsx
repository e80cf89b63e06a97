'use client'

import { useMemo, useRef, useState } from 'react'
import { openDrafts } from '#app/_sync/drafts.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Cloth } from '#app/_ui/cloth.tsx'
import { DraftsProvider } from '#app/_ui/drafts.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, listText, sentence } from '#app/_words/clock.ts'
import { guestName } from '#app/_words/guest.ts'
import type { InvitationFacts } from '#app/_words/invitation.ts'
import { namesOf } from '#app/_words/names.ts'
import { type CourseCoverage, coverage } from '#lib/table/coverage.ts'
import { fewestChanges } from '#lib/table/fewest-changes.ts'
import { tooFew } from '#lib/table/too-few.ts'
import type { GuestTable } from '#server/guests/table.ts'
import { AddGuest } from './add-guest.tsx'
import { atTable, coversWanted } from './at-table.ts'
import { CoverageKey, CoverageTable } from './coverage-table.tsx'
import { CoversLine } from './covers-line.tsx'
import { guestChanges, type PlateFor } from './guest-changes.ts'
import { GuestList } from './guest-list.tsx'
import css from './guests.module.css'
import { Invitations } from './invitations.tsx'
import { Jobs } from './jobs.tsx'
import { LatePanel } from './late-panel.tsx'
import { type Made, MadeLink } from './made-link.tsx'
import { NewInvitation } from './new-invitation.tsx'
import { firstWays, type Proposal } from './proposals.ts'
import { RepliesWords } from './replies-words.tsx'
import { SeatsPicture } from './seats-picture.tsx'
import { useGuests } from './use-guests.ts'
import { useLate } from './use-late.ts'

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
  const { evening, order } = usePlan()
  const names = namesOf(evening)
  const [refused, setRefused] = useState<string | null>(null)
  const desk = useGuests(eveningId, given)
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
  const planned = order.kind === 'none' ? null : order.order
  const covered = useMemo(() => coverage(evening, guests), [evening, guests])
  const changes = useMemo(() => fewestChanges(evening, guests), [evening, guests])
  const few = useMemo(() => tooFew(evening, covered), [evening, covered])
  const covers = coversWanted(table, evening.covers)
  const proposals: readonly Proposal[] = [
    ...(covers === null ? [] : [{ kind: 'covers', covers } as const]),
    ...few.map((each) => ({ kind: 'portions', ...each }) as const),
    ...firstWays(evening, changes),
  ]
  const late = useLate(guests, (stood) => guestChanges(stood.guests, guests).length > 0, proposals)
  const isNew = guestChanges(late.stood.guests, guests).length > 0
  const before = useMemo(() => platesOf(coverage(late.stood.evening, late.stood.guests)), [late.stood])
  const head = useRef<HTMLHeadingElement>(null)
  const show = () => {
    head.current?.closest('section')?.scrollIntoView({ block: 'start' })
    head.current?.focus({ preventScroll: true })
  }
  const askFor = async (id: string) => {
    const guest = guests.find((each) => each.id === id)
    if (!guest) return
    const label = guestName(guest)
    const { invitation } = guest
    const asked = await desk.ask(
      invitation === null ? { kind: 'invite', label, places: 1, guests: [id] } : { kind: 'rotate', invitation },
    )
    setRefused(asked.ok ? null : asked.why)
    if (asked.ok && asked.done.kind === 'link') setMade({ label, path: asked.done.path, sent: asked.done.sent })
  }
  return (
    <main id="main" className={css.main}>
      <Ready />
      {desk.stale ? <Notice>{desk.stale}</Notice> : null}
      {refused ? <Notice>{refused}</Notice> : null}
      <div className={css.top}>
        <div className={css.side}>
          <h1>Guests</h1>
          <p className={css.lead}>
            {sentence(countOf(guests.length, 'guest'))},{' '}
            {awaited === 0 ? 'all have answered' : `${countOf(awaited, 'has', 'have')} not answered`}
          </p>
          <SeatsPicture places={table.places} covers={evening.covers} />
          <CoversLine table={table} />
          <section aria-labelledby="jobs">
            <h2 id="jobs" className={css.sub}>
              To settle
            </h2>
            <Jobs eveningId={eveningId} guests={guests} changes={changes} few={few} onAsk={askFor} />
          </section>
        </div>
        <Cloth label="Who can eat what">
          {guests.length === 0 ? (
            <p className={css.quiet}>Nobody is written down yet.</p>
          ) : (
            <>
              <CoverageTable evening={evening} guests={guests} covered={covered} order={planned} names={names} />
              <CoverageKey />
            </>
          )}
        </Cloth>
      </div>
      {isNew ? (
        <LatePanel late={late} guests={guests} before={before} now={platesOf(covered)} proposals={proposals} headRef={head} />
      ) : null}
      <div className={css.pair}>
        <section className={css.section} aria-labelledby="who">
          <h2 id="who">Who comes</h2>
          <AddGuest desk={desk} onAdded={show} />
          <GuestList desk={desk} />
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

const platesOf = (covered: readonly CourseCoverage[]): readonly PlateFor[] =>
  covered.flatMap(({ course, guests }) => guests.map(({ guest, best }) => ({ course, guest, best })))
