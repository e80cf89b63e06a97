'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { LinkButton } from '#app/_ui/button.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { CookList } from './cook-list.tsx'
import css from './cooks.module.css'
import { DeleteEvening } from './delete-evening.tsx'
import { KitchenList } from './kitchen-list.tsx'
import type { Member, SeatLinkShown } from './member.ts'
import { PartsTable } from './parts-table.tsx'
import { QuietWords } from './quiet-words.tsx'
import { Seats } from './seats.tsx'

interface Props {
  readonly eveningId: string
  readonly members: readonly Member[]
  readonly links: readonly SeatLinkShown[]
}

/** Who cooks and when, who leads, hosts, pours and clears, what the kitchens have, and who may open this evening. */
export function CooksScreen({ eveningId, members, links }: Props) {
  const { evening, me } = usePlan()
  const isHost = me?.role === 'host'
  return (
    <main id="main" className={css.main}>
      <Ready />
      <h1>Cooks and kitchens</h1>
      <section aria-labelledby="cooking">
        <h2 id="cooking">Who cooks</h2>
        <p className={css.quiet}>The running order gives the work to these, within their hours.</p>
        <CookList members={members} />
        <QuietWords />
      </section>
      {evening.courses.length > 0 && evening.cooks.length > 0 ? (
        <section aria-labelledby="parts">
          <h2 id="parts">Who leads, hosts, pours and clears</h2>
          <p className={css.quiet}>
            Who leads a course puts it on the plates when that can be; who hosts it stays at the table while it is finished.
            Pouring and clearing are for the table to know: they are not worked into the order.
          </p>
          <PartsTable />
        </section>
      ) : null}
      <section aria-labelledby="kitchens">
        <h2 id="kitchens">{evening.kitchens.length > 1 ? 'Kitchens' : 'The kitchen'}</h2>
        <p className={css.quiet}>What can be in use at one time. Nothing is wanted twice at once that is there once.</p>
        <KitchenList />
        <LinkButton tone="word" href={`/evenings/${eveningId}/chores`}>
          Chores of the house
        </LinkButton>
        <LinkButton tone="word" href={`/evenings/${eveningId}/bring`}>
          Who brings what
        </LinkButton>
      </section>
      <Seats eveningId={eveningId} members={members} links={links} />
      {isHost ? <DeleteEvening eveningId={eveningId} name={evening.name} /> : null}
    </main>
  )
}
