import type { Metadata } from 'next'
import { DrinksScreen } from '#app/_frame/screens.tsx'
import { requireUser } from '#server/auth/who.ts'
import { tableOf } from '#server/guests/table.ts'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Drinks' }

/** Who drinks what goes to hosts alone, with the page, without the words that guests wrote. */
export default async function Page({ params }: Props) {
  const { id } = await params
  const user = await requireUser()
  const table = await tableOf(user.id, id)
  const guests = table.ok
    ? table.value.guests.map(({ id, name, reply, child, portion, needs, drinks, drives }) => ({
        id,
        name,
        reply,
        child,
        portion,
        needs,
        drinks,
        drives,
        words: '',
      }))
    : null
  return <DrinksScreen guests={guests} />
}
