import type { Metadata } from 'next'
import { DrinksScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { drinkingGuests } from '#server/guests/drinking.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Drinks' }

/** Who drinks what goes to hosts alone, with the page: it is never in the shared plan. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  return <DrinksScreen guests={await drinkingGuests(user.id, id)} />
}
