import { headers } from 'next/headers'
import { notFound } from 'next/navigation'
import type { ReactNode } from 'react'
import { EveningFrame } from '#app/_frame/evening-frame.tsx'
import { handLook } from '#app/_sync/looks.ts'
import { seatOf } from '#server/auth/seat.ts'
import { requireUser } from '#server/auth/who.ts'
import { firstLookOf } from '#server/evenings/first-look.ts'

interface Props {
  readonly children: ReactNode
  readonly params: Promise<{ readonly id: string }>
}

/** Who sits at this evening: everybody else is told that there is nothing here. */
export default async function EveningLayout({ children, params }: Props) {
  const { id } = await params
  const user = await requireUser()
  const seat = await seatOf(user.id, id)
  if (!seat) notFound()
  const ticket = handLook({ ...(await firstLookOf(seat)), width: probableWidth(await headers()) })
  return (
    <EveningFrame eveningId={id} userId={user.id} ticket={ticket}>
      {children}
    </EveningFrame>
  )
}

const PHONE = 412
const LAPTOP = 1280

/** Of the window that asks, in CSS pixels: no more is said of it than that it is a phone's. A narrower one has its drawing made smaller. */
const probableWidth = (asked: Headers): number =>
  asked.get('sec-ch-ua-mobile') === '?1' || /\bMobi/.test(asked.get('user-agent') ?? '') ? PHONE : LAPTOP
