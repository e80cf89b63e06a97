import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '#app/_history/history-list.tsx'
import { requireUser } from '#server/auth/who.ts'
import { readHistory } from '#server/evenings/history.ts'

export const metadata: Metadata = { title: 'Who changed what' }

interface Props {
  readonly params: Promise<{ readonly id: string }>
  readonly searchParams: Promise<{ readonly before?: string | string[] }>
}

/** For hosts; to everybody else there is no such page. */
export default async function Page({ params, searchParams }: Props) {
  const [{ id }, { before }] = await Promise.all([params, searchParams])
  const user = await requireUser()
  const asked = typeof before === 'string' && /^\d{1,15}$/.test(before) ? Number(before) : null
  const history = await readHistory(user.id, id, asked)
  if (!history.ok) notFound()
  return <HistoryList eveningId={id} history={history.value} />
}
