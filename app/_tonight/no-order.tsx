'use client'

import { LinkButton } from '#app/_ui/button.tsx'
import { orderStateText } from '#app/_words/order-state.ts'
import css from './mine.module.css'
import { useNight } from './use-night.ts'

/** There is no running order to go by. */
export function NoOrder() {
  const { evening, orderState } = useNight()
  const hasSteps = evening.steps.length > 0
  return (
    <section className={css.before} aria-labelledby="none">
      <h1 id="none">No running order yet</h1>
      <p className={css.sub}>
        {hasSteps
          ? (orderStateText(orderState) ?? 'It is being planned, and stands here as soon as it is.')
          : 'The board goes by the running order, and that is made of the steps of the dishes. Write some first.'}
      </p>
      {hasSteps ? null : <LinkButton href={`/evenings/${evening.id}/menu`}>To the menu</LinkButton>}
    </section>
  )
}
