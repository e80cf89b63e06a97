import type { Metadata } from 'next'
import { ChoresScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Chores of the house' }

export default function Page() {
  return <ChoresScreen />
}
