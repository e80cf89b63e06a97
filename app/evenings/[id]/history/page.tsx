import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '#app/_history/history-list.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { requireUser } from '#server/auth/who.ts'
import { readHistory } from '#server/evenings/history.ts'

export const metadata: Metadata = { title: 'Who changed what' }

interface Props {
  readonly params: Promise<{ readonly id: string }>
  readonly searchParams: Promise<{ readonly before?: string | string[] }>
}

/** For hosts; the other cooks are told so. */
export default async function Page({ params, searchParams }: Props) {
  const [{ id }, { before }] = await Promise.all([params, searchParams])
  const user = await requireUser()
  const asked = typeof before === 'string' && /^\d{1,15}$/.test(before) ? Number(before) : null
  const history = await readHistory(user.id, id, asked)
  if (history.ok) return <HistoryList eveningId={id} history={history.value} />
  if (history.error.kind !== 'not-allowed') notFound()
  return (
    <Plain title="Who changed what">
      <p>Only the hosts of an evening see who changed what.</p>
      <Ready />
    </Plain>
  )
}
