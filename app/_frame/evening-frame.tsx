'use client'

import dynamic from 'next/dynamic'
import { type ReactNode, useCallback } from 'react'
import { KeepPages } from '#app/_alerts/keep-pages-here.tsx'
import { OwnDevice } from '#app/_alerts/own-device.tsx'
import type { Link } from '#app/_sync/plan.ts'
import { PlanProvider } from '#app/_sync/plan-provider.tsx'
import { Bar } from '#app/_ui/bar.tsx'
import { EveningBar } from './evening-bar.tsx'
import { FromBefore, Reports, Told } from './notices.tsx'
import { StripProvider } from './strip.tsx'
import { TakeAway } from './take-away.tsx'
import { UnsentWords } from './unsent-words.tsx'
import { Waiting } from './waiting.tsx'
import { WhereProvider } from './where.tsx'

const Nothing = () => null

// With what reads shared text, which the frame need not wait for, nor break for when the connection goes before it is here.
const UnsentNotice = dynamic(
  () =>
    import('./unsent-notice.tsx').then(
      (module) => module.UnsentNotice,
      () => Nothing,
    ),
  { ssr: false, loading: () => null },
)

interface Props {
  readonly eveningId: string
  readonly userId: string
  /** Of what the server draws before the plan is open. */
  readonly ticket: string
  readonly children: ReactNode
}

/** What stands around every screen of an evening: the bar with its ways, the link, undo, and the strip of what was removed. */
export function EveningFrame({ eveningId, userId, ticket, children }: Props) {
  const waiting = useCallback(
    (link: Link) => (
      <>
        <Bar />
        <Waiting link={link} />
      </>
    ),
    [],
  )
  return (
    <PlanProvider eveningId={eveningId} userId={userId} ticket={ticket} waiting={waiting}>
      <UnsentWords eveningId={eveningId} userId={userId}>
        <WhereProvider eveningId={eveningId}>
          <StripProvider>
            <EveningBar eveningId={eveningId} />
            <OwnDevice userId={userId} />
            <KeepPages eveningId={eveningId} />
            <Told />
            <FromBefore />
            <UnsentNotice />
            <Reports />
            {children}
            <TakeAway eveningId={eveningId} />
          </StripProvider>
        </WhereProvider>
      </UnsentWords>
    </PlanProvider>
  )
}
