import type { Metadata } from 'next'
import { HomeScreen } from '#app/_frame/screens.tsx'

interface Props {
  readonly params: Promise<{ readonly id: string; readonly kitchen: string }>
}

export const metadata: Metadata = { title: 'From home to the table' }

/** The layout has asked who it is; the plan has all that is shown. */
export default async function Page({ params }: Props) {
  const { id, kitchen } = await params
  return <HomeScreen eveningId={id} kitchen={kitchen} />
}
