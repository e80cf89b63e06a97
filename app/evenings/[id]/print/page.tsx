import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { PrintScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { feedOf } from '#server/calendar/feed.ts'

export const metadata: Metadata = { title: 'Print' }

export default async function Page({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const { id } = await params
  const user = await requireUser()
  const feed = await feedOf(user.id, id)
  if (!feed.ok) notFound()
  return <PrintScreen eveningId={id} feed={feed.value} />
}
