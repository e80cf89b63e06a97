import type { Metadata } from 'next'
import { OrderScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Running order' }

export default function Page() {
  return <OrderScreen />
}
