import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { missingByNeed } from '#app/_bring/missing-by-need.ts'
import { BringScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Who brings what' }

/** Needs stay here: what is missing for them goes out worked out, without whose they are. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  const byNeed = await missingByNeed(user.id, id)
  if (!byNeed.ok) notFound()
  return <BringScreen eveningId={id} byNeed={byNeed.value} />
}
