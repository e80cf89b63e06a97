import type { Metadata } from 'next'
import { AccountForms } from '#app/_account/account-forms.tsx'
import { DeleteAccount } from '#app/_account/delete-account.tsx'
import { MakeAccount } from '#app/_account/make-account.tsx'
import { Notices } from '#app/_account/notices.tsx'
import { OwnData } from '#app/_account/own-data.tsx'
import { UserBar } from '#app/_account/user-bar.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { stakesOf } from '#server/auth/delete-account.ts'
import { requireUser } from '#server/auth/who.ts'
import { readChoices } from '#server/notify/choices.ts'

export const metadata: Metadata = { title: 'Your account' }

export default async function AccountPage() {
  const user = await requireUser()
  return (
    <>
      <UserBar name={user.name} />
      <Plain title={user.name}>
        {user.email === null ? <MakeAccount name={user.name} /> : <p>{user.email}</p>}
        <Notices choices={await readChoices(user.id, Date.now())} />
        <OwnData />
        <AccountForms byLink={user.email === null} />
        <DeleteAccount name={user.email === null ? user.name : null} stakes={await stakesOf(user.id)} />
      </Plain>
    </>
  )
}
