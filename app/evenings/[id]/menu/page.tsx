import type { Metadata } from 'next'
import { MenuScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { needsFor } from '#server/guests/needs.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Menu' }

/** What must be kept away from the plates comes with the page, without names: it is never in the shared plan. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  const needs = await needsFor(user.id, id)
  return <MenuScreen needs={needs.ok && needs.value.scope === 'all' ? needs.value.needs : null} />
}
