import type { Metadata } from 'next'
import { DishScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Dish' }

export default async function Page({ params }: { readonly params: Promise<{ readonly dish: string }> }) {
  const { dish } = await params
  return <DishScreen id={dish} />
}
