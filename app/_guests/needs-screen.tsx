'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, listText } from '#app/_words/clock.ts'
import { needsOf } from '#app/_words/guest.ts'
import { namesOf } from '#app/_words/names.ts'
import { needText } from '#app/_words/need.ts'
import type { TableNeeds } from '#server/guests/needs.ts'
import css from './guests.module.css'

/** What a cook must know of the guests: needs without names, and names where this cook makes or plates something. */
export function NeedsScreen({ needs }: { readonly needs: TableNeeds }) {
  const { evening } = usePlan()
  const names = namesOf(evening)
  const courses = needs.courses.map(names.courseName)
  return (
    <main id="main" className={css.main}>
      <Ready />
      <h1>What the guests eat</h1>
      <p className={css.quiet}>What they have told, without names. Who comes and all that they answered is the hosts’ to see.</p>
      <section aria-labelledby="needs">
        <h2 id="needs">{needs.scope === 'dishes' ? 'To keep in mind for what you bring' : 'To keep in mind'}</h2>
        {needs.scope === 'none' ? (
          <p className={css.open}>
            You are told what to keep out of it once you bring or make something. Until then nothing is said here, which does not
            mean that everything suits everybody.
          </p>
        ) : needs.needs.length === 0 ? (
          <p>Nobody has told of anything they cannot eat.</p>
        ) : (
          <ul className={css.needs}>
            {needs.needs.map((need) => (
              <li key={`${need.need} ${need.grade}`} className={need.grade === 'severe' ? css.severe : undefined}>
                <b>{needText(need)}</b> {countOf(need.guests, 'guest')}
              </li>
            ))}
          </ul>
        )}
        {needs.unknown > 0 ? (
          <p className={css.open}>
            {countOf(needs.unknown, 'guest has', 'guests have')} not told yet what they eat: for them nothing counts as safe.
          </p>
        ) : null}
      </section>
      {courses.length > 0 ? (
        <section aria-labelledby="named">
          <h2 id="named">By name, for what you make</h2>
          <p className={css.quiet}>You have a hand in {listText(courses)}, so that you know whose plate it is.</p>
          <ul className={css.needs}>
            {needs.named.map((guest) => (
              <li key={guest.name}>
                <b>{guest.name}</b> {needsOf(guest)}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </main>
  )
}
