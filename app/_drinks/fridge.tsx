'use client'

import { useParams } from 'next/navigation'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { atText, clockText, countOf, dayName, dayOf, listText } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import { ok } from '#lib/domain/result.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Amount } from '#lib/drinks/amounts.ts'
import { bottleMinutes, type Chilling } from '#lib/drinks/cold.ts'
import { putChore } from '#lib/plan/commands/put-chore.ts'
import { chillId, chillStep, isOutOfDate, pouredAt } from './chill-step.ts'
import css from './drinks.module.css'

interface Props {
  readonly found: readonly Chilling[]
  readonly amounts: readonly Amount[]
  readonly order: RunningOrder | null
}

/** What goes into the fridge for how long, and into the running order as chores with their places. */
export function Fridge({ found, amounts, order }: Props) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const eveningId = String(useParams().id ?? evening.id)
  if (found.length === 0) return null
  const steps = found.map((each) => chillStep(evening, each, amounts, pouredAt(evening, each.course, order)))
  const inPlan = new Map(evening.steps.map((step) => [step.id, step]))
  const open = steps.filter((step) => {
    const old = inPlan.get(step.id)
    return !old || isOutOfDate(old, step)
  })
  const own = new Set(found.map(({ course }) => chillId(course)))
  const others = evening.steps.filter(
    (step) =>
      step.dish === null &&
      !own.has(step.id) &&
      step.ways.some(({ uses }) => uses.some((use) => use.kind === 'cold' && use.keep === 'cold')),
  )
  const put = (those: typeof steps) =>
    tell((doc) => {
      for (const step of those) {
        const done = putChore(doc, step)
        if (!done.ok) return done
      }
      return ok(null)
    })
  return (
    <section aria-labelledby="fridge">
      <h2 id="fridge">Into the fridge</h2>
      <ul>
        {found.map((each, at) => {
          const step = steps[at]
          if (!step) return null
          const old = inPlan.get(step.id)
          const cue = order?.cues.find((candidate) => candidate.step === step.id)
          const state = !old ? 'not-yet' : isOutOfDate(old, step) ? 'old' : 'there'
          return (
            <li key={each.course} className={css.chilled}>
              <p>
                <b>{evening.courses.find(({ id }) => id === each.course)?.name}</b>: {countOf(each.bottles, 'bottle')} for{' '}
                {chillText(each.minutes.likely)} ({chillText(each.minutes.least)} to {chillText(each.minutes.most)}),{' '}
                {countOf(each.places, 'place')}, poured at {atText(evening.date, pouredAt(evening, each.course, order))}.
                {state === 'there' && cue
                  ? ` In the order: in at ${dayOf(evening, cue.start) === 0 ? '' : `${dayName(evening.date, dayOf(evening, cue.start))} `}${clockText(cue.start, evening.zone)}.`
                  : state === 'there'
                    ? ' On the chores list.'
                    : ''}
              </p>
              {each.wantIce.length > 0 ? (
                <p className={css.quiet}>
                  {listText(each.wantIce.map((id) => evening.drinks.find((drink) => drink.id === id)?.name ?? 'a drink'))} is
                  served colder than a fridge makes it: {iceText()} in ice and water at the end.
                </p>
              ) : null}
              {state === 'there' ? null : (
                <Button tone="word" onClick={() => put([step])}>
                  {state === 'old' ? 'Bring it up to date in the order' : 'Put it in the order'}
                  <span className="vh"> for {evening.courses.find(({ id }) => id === each.course)?.name}</span>
                </Button>
              )}
            </li>
          )
        })}
      </ul>
      {open.length > 1 ? (
        <p>
          <Button tone="soft" onClick={() => put(open)}>
            Put all {open.length} in the order
          </Button>
        </p>
      ) : null}
      {others.length > 0 ? (
        <p className={css.quiet}>
          In the fridge already by the list of chores: {listText(others.map(({ does }) => `“${does}”`))}. What stands there need
          not be put in twice: <Link href={`/evenings/${eveningId}/chores`}>the chores</Link>.
        </p>
      ) : null}
      <p className={css.quiet}>
        Estimates by Newton’s law from a room of 20° into a fridge of 4°; a bottle takes two to three hours: common practice, no
        official source. Six bottles to a place.
      </p>
    </section>
  )
}

/** Estimates are said in fives. */
const chillText = (minutes: number): string => minutesText(Math.round(minutes / 5) * 5)

const iceText = (): string => {
  const minutes = bottleMinutes('ice', 4)
  return minutes ? `about ${minutesText(Math.round(minutes.likely))}` : 'a while'
}
