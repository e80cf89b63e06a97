import { redirect } from 'next/navigation'

export default async function EveningPage({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const { id } = await params
  redirect(`/evenings/${id}/menu`)
}
