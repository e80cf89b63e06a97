'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Link } from '#app/_ui/link.tsx'
import { type DishColour, dishColour, Plate } from '#app/_ui/plate.tsx'
import { clockText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Offer } from '#lib/domain/offer.ts'
import css from './bring.module.css'
import { OfferItem } from './offer-item.tsx'

interface Props {
  readonly eveningId: string
  readonly names: Names
}

/** What everybody brings, course by course, then the things; and what comes from other homes that was never offered here. */
export function OfferList({ eveningId, names }: Props) {
  const { evening, order } = usePlan()
  const offers = evening.offers ?? []
  const became = new Set(offers.map(({ dish }) => dish))
  const carried = evening.dishes.filter((dish) => dish.kitchen !== evening.host && dish.state === 'on' && !became.has(dish.id))
  const planned = order.kind === 'none' ? null : order.order
  const things = offers.filter(({ kind }) => kind === 'thing')
  const loose = offers.filter((offer) => offer.kind === 'dish' && !evening.courses.some(({ id }) => id === offer.course))
  if (offers.length + carried.length === 0)
    return <p className={css.quiet}>Nobody has said yet what they bring. Say it yourself, or send the others here.</p>
  return (
    <>
      {evening.courses.map((course, index) => {
        const own = offers.filter((offer) => offer.kind === 'dish' && offer.course === course.id)
        const dishes = carried.filter((dish) => dish.course === course.id)
        if (own.length + dishes.length === 0) return null
        const toTable = planned?.courses.find((each) => each.course === course.id)?.toTable
        return (
          <section key={course.id} className={css.course} aria-label={names.courseName(course.id)}>
            <h3>
              {names.courseName(course.id)}
              {toTable === undefined ? null : <small>{clockText(toTable, evening.zone)}</small>}
            </h3>
            <Offers eveningId={eveningId} offers={own} colour={dishColour(index)} names={names} />
            <Carried eveningId={eveningId} dishes={dishes} colour={dishColour(index)} names={names} />
          </section>
        )
      })}
      {loose.length > 0 ? (
        <section className={css.course} aria-label="To whichever course">
          <h3>To whichever course</h3>
          <Offers eveningId={eveningId} offers={loose} colour={1} names={names} />
        </section>
      ) : null}
      {things.length > 0 ? (
        <section className={css.course} aria-label="Not food">
          <h3>Not food</h3>
          <Offers eveningId={eveningId} offers={things} colour={4} names={names} />
        </section>
      ) : null}
    </>
  )
}

interface OffersProps extends Props {
  readonly offers: readonly Offer[]
  readonly colour: DishColour
}

function Offers({ offers, ...rest }: OffersProps) {
  if (offers.length === 0) return null
  return (
    <ul>
      {offers.map((offer) => (
        <OfferItem key={offer.id} offer={offer} {...rest} />
      ))}
    </ul>
  )
}

interface CarriedProps extends Props {
  readonly dishes: readonly Dish[]
  readonly colour: DishColour
}

/** Dishes of the menu that come from another home. */
function Carried({ eveningId, dishes, colour, names }: CarriedProps) {
  if (dishes.length === 0) return null
  return (
    <ul>
      {dishes.map((dish) => (
        <li key={dish.id} className={css.offer}>
          <Plate size={46} colour={colour} />
          <div className={css.offerWords}>
            <h4>
              <Link href={`/evenings/${eveningId}/menu/${dish.id}`}>{dish.name}</Link>
              <span className={css.state}>on the menu</span>
            </h4>
            <p className={css.about}>Comes from {names.kitchenName(dish.kitchen)}.</p>
          </div>
        </li>
      ))}
    </ul>
  )
}
