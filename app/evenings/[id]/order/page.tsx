import type { Metadata } from 'next'
import { FirstVerdict, OrderScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Running order' }

export default function Page() {
  return (
    <>
      <FirstVerdict />
      <OrderScreen />
    </>
  )
}
