import { longDate } from '#app/_words/clock.ts'
import { CARD_CARE, cardText } from '#app/_words/print.ts'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { cardAllergens } from '#lib/table/card-allergens.ts'
import css from './card.module.css'

interface Props {
  readonly evening: Evening
  readonly drinks: boolean
  readonly allergens: boolean
}

/** The menu as it lies on the table. What is made for one guest alone is not on it: nobody's diet is anybody's reading. */
export function MenuCard({ evening, drinks, allergens }: Props) {
  const courses = servedCourses(evening)
  return (
    <article className={css.card}>
      <p className={css.cardDate}>{longDate(evening.date)}</p>
      <h2>{evening.name}</h2>
      {courses.map((course) => {
        const dishes = evening.dishes
          .filter((dish) => dish.course === course.id && dish.state === 'on' && dish.variant === undefined)
          .toSorted(bySiblingOrder)
        const poured = drinks ? evening.drinks.filter((drink) => drink.course === course.id).toSorted(bySiblingOrder) : []
        return (
          <section key={course.id} className={css.cardCourse}>
            <h3>{course.name}</h3>
            <ul>
              {dishes.map((dish) => (
                <li key={dish.id}>
                  {dish.name}
                  {allergens ? <small>{cardText(cardAllergens(evening, dish))}</small> : null}
                </li>
              ))}
            </ul>
            {poured.length > 0 ? <p className={css.poured}>{poured.map(({ name }) => name).join(' · ')}</p> : null}
          </section>
        )
      })}
      {allergens ? <p className={css.cardCare}>{CARD_CARE}</p> : null}
    </article>
  )
}
