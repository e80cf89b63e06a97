'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useMemo } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import type { Guest } from '#lib/domain/people.ts'
import { amountsOf } from '#lib/drinks/amounts.ts'
import { chillings } from '#lib/drinks/cold.ts'
import { drinkers } from '#lib/drinks/pour.ts'
import { Buying } from './buying.tsx'
import { CourseDrinks } from './course-drinks.tsx'
import css from './drinks.module.css'
import { Fridge } from './fridge.tsx'
import { HadTable } from './had-table.tsx'

/** What is poured: two drinks with each course, how much to have, when it goes in the fridge. `guests`: for hosts; null for everybody else. */
export function DrinksScreen({ guests }: { readonly guests: readonly Guest[] | null }) {
  const { evening, order, onGuests } = usePlan()
  const router = useRouter()
  const isHost = guests !== null
  // An answer that comes while the page is open comes with the page again.
  useEffect(() => (isHost ? onGuests(() => router.refresh()) : undefined), [isHost, onGuests, router])
  const answered = guests === null ? null : Math.min(drinkers(guests).length, evening.covers)
  const alcohol = evening.drinkers ?? answered
  const planned = order.kind === 'none' ? null : order.order
  const amounts = useMemo(() => amountsOf(evening), [evening])
  const found = useMemo(() => chillings(evening, amounts), [evening, amounts])
  return (
    <main id="main" className={css.main}>
      <Ready />
      <div className={css.head}>
        <h1>Drinks</h1>
        <p>
          {sentence(countOf(evening.courses.length, 'course'))}, for {evening.covers}: one with alcohol and one without for each.
        </p>
      </div>
      {evening.courses.length === 0 ? (
        <p className={css.quiet}>Begin with the menu: drinks go with its courses.</p>
      ) : (
        <Cloth label="Drinks with each course">
          <ol>
            {evening.courses.map((course, index) => (
              <CourseDrinks
                key={course.id}
                course={course}
                index={index}
                toTable={planned?.courses.find((each) => each.course === course.id)?.toTable ?? null}
                alcohol={alcohol === null || alcohol > 0}
              />
            ))}
          </ol>
        </Cloth>
      )}
      {guests === null ? null : <HadTable guests={guests} order={planned} />}
      <div className={css.two}>
        <Buying amounts={amounts} answered={guests?.length ? answered : null} />
        <Fridge found={found} amounts={amounts} order={planned} />
      </div>
    </main>
  )
}
