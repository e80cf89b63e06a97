import type { Metadata } from 'next'
import { UserBar } from '#app/_account/user-bar.tsx'
import { DishList } from '#app/_learning/dish-list.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { requireUser } from '#server/auth/who.ts'
import { readLibrary } from '#server/learning/library.ts'

export const metadata: Metadata = { title: 'Your dishes' }

export default async function DishesPage() {
  const user = await requireUser()
  const library = await readLibrary(user.id, Date.now())
  return (
    <>
      <UserBar name={user.name} />
      <Plain title="Your dishes">
        <p>
          {library.dishes.length === 0
            ? 'The dishes of your evenings come here when these are over: how long their steps took, and how you found them.'
            : 'What was served at your evenings, and how it went. What you say of a dish here only you see.'}
        </p>
        <DishList library={library} />
      </Plain>
      <Ready />
    </>
  )
}
