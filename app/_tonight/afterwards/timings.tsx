'use client'

import { useMemo } from 'react'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useNight } from '#app/_tonight/use-night.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { LEARNT, learntText, tookText, usualText } from '#app/_words/afterwards.ts'
import { countOf } from '#app/_words/clock.ts'
import { type Actual, actualsOf } from '#lib/night/afterwards.ts'
import css from './afterwards.module.css'
import { type Learnt, learn } from './learn.ts'

const learntOf = ({ step, way, suggests }: Actual): readonly Learnt[] => (suggests ? [{ step, way, takes: suggests }] : [])

/** What really took how long, and what of it is offered as the usual minutes, one by one or all. */
export function Timings() {
  const { evening, order, names } = useNight()
  const { undo } = usePlan()
  const { tell } = useEdit()
  const show = useStrip()
  const actuals = useMemo(() => (order ? actualsOf(evening, order) : []), [evening, order])
  const off = actuals.filter(({ suggests }) => suggests !== null)
  const right = actuals.filter(({ suggests }) => suggests === null)
  const take = (all: readonly Learnt[]) => {
    if (tell((doc) => learn(doc, evening, all))) show(learntText(all.length), undo)
  }
  return (
    <section className={css.part} aria-labelledby="took">
      <h2 id="took">What took how long</h2>
      {actuals.length === 0 ? (
        <p className={css.quiet}>Of no step both the beginning and the end were told: nothing is learnt from guesses.</p>
      ) : off.length === 0 ? (
        <p>{countOf(actuals.length, 'step')} told from beginning to end, and each took about as long as it usually does.</p>
      ) : (
        <>
          <p className={css.quiet}>{LEARNT}</p>
          <ul className={css.rows}>
            {off.map((actual) => (
              <li key={actual.step}>
                <b>{names.stepName(actual.step)}</b> <span>{tookText(actual, names)}</span>
                <Button
                  tone="soft"
                  onClick={() => take(learntOf(actual))}
                  aria-label={`${usualText(actual)}: ${names.stepName(actual.step)}`}
                >
                  {usualText(actual)}
                </Button>
              </li>
            ))}
          </ul>
          {off.length > 1 ? <Button onClick={() => take(off.flatMap(learntOf))}>Take them all</Button> : null}
        </>
      )}
      {right.length > 0 && off.length > 0 ? (
        <Fold title={`About as usual (${right.length})`}>
          <ul className={css.rows}>
            {right.map((actual) => (
              <li key={actual.step}>
                <b>{names.stepName(actual.step)}</b> <span>{tookText(actual, names)}</span>
              </li>
            ))}
          </ul>
        </Fold>
      ) : null}
    </section>
  )
}
