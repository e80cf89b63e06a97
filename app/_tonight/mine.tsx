'use client'

import type { CookNow } from '#lib/night/board.ts'
import { Beside } from './beside.tsx'
import css from './board.module.css'
import { Free } from './free.tsx'
import { GuardLines } from './guard-lines.tsx'
import { GuestTaps } from './guest-taps.tsx'
import mine from './mine.module.css'
import { NowPanel } from './now-panel.tsx'
import { Others } from './others.tsx'
import { PlatingOffer } from './plating.tsx'
import { CallsNext, Guests, Ovens } from './side.tsx'
import { Then } from './then.tsx'
import { useNight } from './use-night.ts'

/** A phone in a pocket: what its cook does now, and until when they sit. */
export function Mine() {
  const { board } = useNight()
  const one = board?.now[0]
  if (!board || !one) return null
  return (
    <div className={mine.mine}>
      <Own one={one} />
      <Then one={one} />
      <GuardLines />
      <Beside cooks={[one]} />
      <div className={css.side}>
        <CallsNext />
        <Ovens />
        <Guests />
      </div>
      <Others others={board.others} />
    </div>
  )
}

/** A phone beside the plate: silent, with the table's own two questions; what calls its cook is said all the same. */
export function AtTable() {
  const { board } = useNight()
  const one = board?.now[0]
  if (!board || !one) return null
  return (
    <div className={mine.mine}>
      <Own one={one} />
      <GuardLines />
      <div className={css.side}>
        <CallsNext />
        <Guests />
      </div>
    </div>
  )
}

/** What a phone has first, wherever it is: its cook's now, and what the guests and the plates ask. */
function Own({ one }: { readonly one: CookNow }) {
  const { names } = useNight()
  return (
    <>
      {one.hands ? <NowPanel task={one.hands} cook={one.cook} name={names.cookName(one.cook)} /> : <Free one={one} />}
      <GuestTaps />
      <PlatingOffer />
    </>
  )
}
