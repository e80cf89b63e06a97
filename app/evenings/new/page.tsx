import type { Metadata } from 'next'
import { UserBar } from '#app/_account/user-bar.tsx'
import css from '#app/_evenings/evenings.module.css'
import { ImportForm } from '#app/_evenings/import-form.tsx'
import { NewEvening } from '#app/_evenings/new-evening.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { dateText } from '#app/_words/clock.ts'
import { requireUser } from '#server/auth/who.ts'

export const metadata: Metadata = { title: 'Plan an evening' }

export default async function NewEveningPage() {
  const user = await requireUser()
  return (
    <>
      <UserBar name={user.name} />
      <main id="main" className={css.fresh}>
        <h1>Plan an evening</h1>
        <NewEvening userId={user.id} host={user.name} today={dateText(Date.now(), 'UTC')} />
        <ImportForm />
      </main>
      <Ready />
    </>
  )
}
