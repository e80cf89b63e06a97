'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankDrink } from '#app/_menu/blank.ts'
import { DrinkWords } from '#app/_menu/drink-words.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { dishColour, Plate } from '#app/_ui/plate.tsx'
import { shortMeasuredText } from '#app/_words/alcohol.ts'
import { clockText } from '#app/_words/clock.ts'
import type { Course } from '#lib/domain/menu.ts'
import type { Drink } from '#lib/domain/people.ts'
import { ethanolMl, measured, measureOf } from '#lib/drinks/alcohol.ts'
import { addDrink } from '#lib/plan/commands/add.ts'
import css from './drinks.module.css'
import { Offer } from './offer.tsx'

interface Props {
  readonly course: Course
  readonly index: number
  readonly toTable: string | null
  /** Somebody may be poured alcohol, or it is not known here whether anybody may. */
  readonly alcohol: boolean
}

/** One course: what is poured with it for those who drink alcohol, and for those who do not. */
export function CourseDrinks({ course, index, toTable, alcohol }: Props) {
  const { evening } = usePlan()
  const own = evening.drinks.filter((drink) => drink.course === course.id)
  return (
    <li className={css.course} aria-labelledby={`drinks-${course.id}`}>
      <div className={css.plate}>
        <Plate size={56} colour={dishColour(index)} />
        <b>{toTable === null ? '' : clockText(toTable, evening.zone)}</b>
      </div>
      <h2 id={`drinks-${course.id}`} className={css.courseName}>
        {course.name}
        <small className={css.courseDishes}>
          {evening.dishes
            .filter((dish) => dish.course === course.id && dish.state === 'on')
            .map(({ name }) => name)
            .join(', ')}
        </small>
      </h2>
      <Side course={course} sort="with" title="With alcohol" drinks={own} offers={alcohol} />
      <Side course={course} sort="without" title="Without" drinks={own} offers />
    </li>
  )
}

interface SideProps {
  readonly course: Course
  readonly sort: Drink['role']
  readonly title: string
  readonly drinks: readonly Drink[]
  readonly offers: boolean
}

function Side({ course, sort, title, drinks, offers }: SideProps) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const own = drinks.filter((drink) => drink.role === sort)
  const measure = measureOf(evening.rules)
  return (
    <div className={css.side}>
      <h3>{title}</h3>
      {own.length > 0 ? (
        <ul>
          {own.map((drink) => (
            <li key={drink.id}>
              <Entry id={drink.id}>
                <DrinkWords drink={drink} drinks={drinks} at={drinks.indexOf(drink)} />
              </Entry>
              {drink.abv > 0 ? (
                <p className={css.quiet}>
                  {shortMeasuredText(measured(ethanolMl(drink.mlEach, drink.abv), measure), measure)} in a glass
                </p>
              ) : null}
            </li>
          ))}
        </ul>
      ) : null}
      {offers ? (
        <Offer course={course} sort={sort} folded={own.length > 0} />
      ) : own.length === 0 ? (
        <p className={css.quiet}>Nobody has said that they drink any, so none is suggested.</p>
      ) : null}
      <Button
        tone="word"
        onClick={() => tell((doc) => addDrink(doc, blankDrink(newId(), course.id, sort)))}
        aria-label={`Write down another drink ${sort === 'with' ? 'with alcohol' : 'without alcohol'} for ${course.name}`}
      >
        {own.length > 0 ? 'Another one' : 'Write your own'}
      </Button>
    </div>
  )
}
