import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { Door } from '#app/_account/door.tsx'
import { nextPage } from '#app/_account/next-page.ts'
import { SignUpForm } from '#app/_account/sign-up-form.tsx'
import { currentUser } from '#server/auth/who.ts'

export const metadata: Metadata = { title: 'Make an account' }

export default async function SignUpPage({
  searchParams,
}: {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { next } = await searchParams
  const target = nextPage(typeof next === 'string' ? next : null)
  if (await currentUser()) redirect(target)
  return (
    <Door title="Make an account">
      <SignUpForm next={target} />
    </Door>
  )
}
