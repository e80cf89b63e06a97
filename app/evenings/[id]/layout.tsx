import { notFound } from 'next/navigation'
import type { ReactNode } from 'react'
import { EveningFrame } from '#app/_frame/evening-frame.tsx'
import { seatOf } from '#server/auth/seat.ts'
import { requireUser } from '#server/auth/who.ts'

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
  return (
    <EveningFrame eveningId={id} userId={user.id}>
      {children}
    </EveningFrame>
  )
}
