import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { Door } from '#app/_account/door.tsx'
import { nextPage } from '#app/_account/next-page.ts'
import { SignInForm } from '#app/_account/sign-in-form.tsx'
import { currentUser } from '#server/auth/who.ts'

export const metadata: Metadata = { title: 'Sign in' }

export default async function SignInPage({
  searchParams,
}: {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { next } = await searchParams
  const target = nextPage(typeof next === 'string' ? next : null)
  if (await currentUser()) redirect(target)
  return (
    <Door title="Sign in">
      <SignInForm next={target} />
    </Door>
  )
}
