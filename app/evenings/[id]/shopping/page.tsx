import type { Metadata } from 'next'
import { ShoppingScreen } from '#app/_frame/screens.tsx'

interface Props {
  readonly params: Promise<{ readonly id: string }>
}

export const metadata: Metadata = { title: 'Shopping' }

/** Kept on the device for when there is no network: nothing of a guest is on it. */
export default async function Page({ params }: Props) {
  return <ShoppingScreen eveningId={(await params).id} />
}
