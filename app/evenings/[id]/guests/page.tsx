import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { GuestsScreen, NeedsScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { needsFor } from '#server/guests/needs.ts'
import { tableOf } from '#server/guests/table.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Guests' }

/** Hosts see the guests and their answers; a cook sees what must be kept in mind, without names but for what they make. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  const table = await tableOf(user.id, id)
  if (table.ok) return <GuestsScreen eveningId={id} given={table.value} />
  const needs = await needsFor(user.id, id)
  if (!needs.ok) notFound()
  return <NeedsScreen needs={needs.value} />
}
