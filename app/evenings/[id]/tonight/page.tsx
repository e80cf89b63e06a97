import type { Metadata } from 'next'
import { TonightScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Tonight' }

export default function Page() {
  return <TonightScreen />
}
