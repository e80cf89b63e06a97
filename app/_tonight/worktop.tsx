'use client'

import { useState } from 'react'
import type { CookNow } from '#lib/night/board.ts'
import { Beside } from './beside.tsx'
import css from './board.module.css'
import { Free } from './free.tsx'
import { GuardLines } from './guard-lines.tsx'
import { GuestTaps } from './guest-taps.tsx'
import { NowPanel } from './now-panel.tsx'
import { Others } from './others.tsx'
import { PlatingOffer } from './plating.tsx'
import { AfterThis, CallsNext, Guests, Ovens } from './side.tsx'
import { useNight } from './use-night.ts'

/** Overdue before under way before what is to begin; then whatever ends first. */
const urgency = ({ hands }: CookNow): number =>
  hands ? (hands.overdue ? 0 : hands.isBegun ? 1 : 2) * 1e15 + hands.end : Number.POSITIVE_INFINITY

const soonest = (one: CookNow): number => one.next?.at ?? Number.POSITIVE_INFINITY

/** The tablet on the worktop: everybody's work, the most urgent of it large. */
export function Worktop() {
  const { board, names } = useNight()
  const [chosen, setChosen] = useState<string | null>(null)
  const cooks = board?.now ?? []
  const [first] = cooks.toSorted((a, b) => urgency(a) - urgency(b) || soonest(a) - soonest(b))
  const lead = cooks.find(({ cook, hands }) => cook === chosen && hands) ?? first
  if (!lead) return null
  return (
    <div className={css.worktop}>
      <div className={css.main}>
        {lead.hands ? (
          <NowPanel key={lead.cook} task={lead.hands} cook={lead.cook} name={names.cookName(lead.cook)} />
        ) : (
          <Free one={lead} large />
        )}
      </div>
      <aside className={css.side} aria-label="What comes next">
        <CallsNext />
        <AfterThis one={lead} />
        <Ovens />
        <GuestTaps />
        <PlatingOffer />
      </aside>
      <div className={css.low}>
        <GuardLines />
        <Others others={cooks.filter((one) => one !== lead)} onLead={setChosen} />
        <Beside cooks={cooks} />
      </div>
      <div className={css.lowSide}>
        <Guests />
      </div>
    </div>
  )
}
