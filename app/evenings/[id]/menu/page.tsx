import type { Metadata } from 'next'
import { MenuScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Menu' }

export default function Page() {
  return <MenuScreen needs={null} />
}
