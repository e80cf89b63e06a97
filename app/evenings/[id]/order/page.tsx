import type { Metadata } from 'next'
import { FirstVerdict, OrderScreen } from '#app/_frame/screens.tsx'

export const metadata: Metadata = { title: 'Running order' }

interface Props {
  readonly searchParams: Promise<{ readonly first?: string | string[] }>
}

export default async function Page({ searchParams }: Props) {
  const { first } = await searchParams
  return (
    <>
      {first === undefined ? null : <FirstVerdict />}
      <OrderScreen />
    </>
  )
}
