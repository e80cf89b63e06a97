import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { SheetScreen } from '#app/_frame/screens.tsx'
import { isSheet, sheetNames } from '#app/_words/print.ts'
import { requireUser } from '#server/auth/who.ts'
import { needsFor } from '#server/guests/needs.ts'

interface Props {
  readonly params: Promise<{ readonly id: string; readonly sheet: string }>
}

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => {
  const { sheet } = await params
  return { title: isSheet(sheet) ? sheetNames[sheet] : 'Print' }
}

/** What guests must not have comes with the page, as much of it as this person is told. */
export default async function Page({ params }: Props) {
  const { id, sheet } = await params
  const user = await requireUser()
  const needs = await needsFor(user.id, id)
  if (!needs.ok || !isSheet(sheet)) notFound()
  return <SheetScreen sheet={sheet} eveningId={id} needs={needs.value} />
}
