'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { measuredText } from '#app/_words/alcohol.ts'
import { countOf, listText, sentence } from '#app/_words/clock.ts'
import { ethanolMl, measured, measureOf } from '#lib/drinks/alcohol.ts'
import { dryGaps } from '#lib/drinks/pour.ts'
import css from './menu.module.css'
import type { MenuRows } from './rows.ts'

/** What the whole menu asks: minutes at the last, what is worth a look, what nobody has yet. */
export function MenuSum({ rows }: { readonly rows: MenuRows }) {
  const { evening } = usePlan()
  const minutes = rows.minutes === null ? null : Math.round(rows.minutes)
  const cooks = evening.cooks.map((cook) => cook.name)
  const claimed = new Set(evening.claims.map((claim) => claim.target))
  const open = evening.dishes.filter((dish) => dish.state === 'on' && !claimed.has(dish.id) && !claimed.has(dish.course))
  const ethanol = evening.courses.reduce((sum, { id }) => {
    const strong = evening.drinks.find((drink) => drink.course === id && drink.abv > 0)
    return sum + (strong ? ethanolMl(strong.mlEach, strong.abv) : 0)
  }, 0)
  const gaps = dryGaps(evening).map((id) => evening.courses.find((course) => course.id === id)?.name ?? 'a course')
  const measure = measureOf(evening.rules)
  const names = open.slice(0, 3).map((dish) => dish.name)
  return (
    <section className={css.sum} aria-label="What the menu asks">
      {minutes === null ? null : (
        <div>
          <h2>{minutes === 0 ? 'No last-minute minutes' : `${minutes} last-minute ${minutes === 1 ? 'minute' : 'minutes'}`}</h2>
          <p>in the quarters of an hour before the courses{cooks.length > 1 ? `, shared by ${listText(cooks)}` : ''}.</p>
        </div>
      )}
      <div>
        <h2>{rows.warnings === 0 ? 'Nothing to warn of' : `${sentence(countOf(rows.warnings, 'thing'))} worth a look`}</h2>
        <p>
          {rows.warnings === 0
            ? 'as far as is known: minutes, oven heats, main ingredients and what guests have told.'
            : 'marked with a cross-stitch under their courses.'}
        </p>
      </div>
      <div>
        <h2>
          {open.length === 0 ? 'Every dish has a cook' : `${sentence(countOf(open.length, 'dish', 'dishes'))} nobody has yet`}
        </h2>
        <p>
          {open.length === 0
            ? 'and its steps go to that cook first.'
            : `${open.length > 3 ? `${names.join(', ')} and others` : listText(names)}: the order shares them out until somebody takes them.`}
        </p>
      </div>
      {ethanol > 0 ? (
        <div>
          <h2>{measuredText(measured(ethanol, measure), measure)} each</h2>
          <p>
            for whoever has every glass with alcohol.{' '}
            {gaps.length === 0
              ? 'There is one without for everybody who would rather not.'
              : `Without alcohol there is nothing yet for ${listText(gaps)}.`}
          </p>
        </div>
      ) : null}
    </section>
  )
}
