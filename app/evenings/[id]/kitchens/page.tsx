import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { CooksScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { listMembers } from '#server/evenings/members.ts'
import { listSeatLinks } from '#server/seats/links.ts'

export const metadata: Metadata = { title: 'Cooks and kitchens' }

export default async function Page({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const { id } = await params
  const user = await requireUser()
  const members = await listMembers(user.id, id)
  if (!members.ok) notFound()
  const links = await listSeatLinks(user.id, id)
  return <CooksScreen eveningId={id} members={members.value} links={links.ok ? links.value : []} />
}
