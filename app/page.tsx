import { UserBar } from '#app/_account/user-bar.tsx'
import { EmptyHome } from '#app/_evenings/empty-home.tsx'
import { NextEvening } from '#app/_evenings/next-evening.tsx'
import { OtherEvenings } from '#app/_evenings/other-evenings.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { dateText } from '#app/_words/clock.ts'
import { requireUser } from '#server/auth/who.ts'
import { listEvenings } from '#server/evenings/list.ts'

export default async function EveningsPage() {
  const user = await requireUser()
  const evenings = await listEvenings(user.id)
  const [first] = evenings
  const now = Date.now()
  const next = first && first.date >= dateText(now, first.zone) ? first : null
  return (
    <>
      <UserBar name={user.name} />
      <main id="main">
        {evenings.length === 0 ? (
          <EmptyHome />
        ) : (
          <>
            {next ? <NextEvening evening={next} today={dateText(now, next.zone)} /> : null}
            <OtherEvenings evenings={evenings.filter((evening) => evening !== next)} isOnly={next === null} />
          </>
        )}
      </main>
      <Ready />
    </>
  )
}
