import type { Metadata } from 'next'
import { RecipeScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Bring a recipe in' }

export default function Page() {
  return <RecipeScreen />
}
