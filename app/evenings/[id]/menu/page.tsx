import type { Metadata } from 'next'
import { MenuScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { knownNeeds } from '#server/evenings/guests.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Menu' }

/** What guests have told goes to hosts alone, with the page: it is never in the shared plan. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  return <MenuScreen needs={await knownNeeds(user.id, id)} />
}
