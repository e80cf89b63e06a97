'use client'

import { ClaimLine } from '#app/_frame/claim.tsx'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useNight } from '#app/_tonight/use-night.ts'
import { Button } from '#app/_ui/button.tsx'
import { sharedText } from '#app/_words/afterwards.ts'
import { ok } from '#lib/domain/result.ts'
import { closingOf } from '#lib/night/afterwards.ts'
import { putChore } from '#lib/plan/commands/put-chore.ts'
import css from './afterwards.module.css'
import { closingToAdd, shareOut } from './closing.ts'

/** What is still to be done in the house: who does it, shared out in one tap, and done with another. */
export function ClosingSteps() {
  const { evening, order, names, tell, cook, isHost, nowMs } = useNight()
  const { send, undo } = usePlan()
  const { tell: edit } = useEdit()
  const show = useStrip()
  const left = order ? closingOf(evening, order, nowMs).map(({ step }) => step) : []
  const chores = left.flatMap((id) => evening.steps.find((step) => step.id === id) ?? [])
  const toAdd = closingToAdd(evening)
  const shares = order ? shareOut(evening, order, chores) : []
  const add = () => {
    const made = edit((doc) => {
      for (const chore of toAdd) {
        const put = putChore(doc, chore)
        if (!put.ok) return put
      }
      return ok(null)
    })
    if (made) show('The usual ones are among the chores now.', undo)
  }
  return (
    <section className={css.part} aria-labelledby="closing">
      <h2 id="closing">Still to do</h2>
      {chores.length === 0 ? <p>Nothing is left to do.</p> : null}
      <ul className={css.rows}>
        {chores.map(({ id, does }) => (
          <li key={id}>
            <b>{does}</b> <ClaimLine target={id} name={names.stepName(id)} />
            <Button tone="soft" onClick={() => tell({ kind: 'done', step: id }, cook ?? undefined)} aria-label={`Done: ${does}`}>
              Done
            </Button>
          </li>
        ))}
      </ul>
      {isHost && shares.length > 0 ? (
        <p>
          <Button onClick={() => shares.forEach((share) => void send({ kind: 'claim', ...share }))}>Share them out</Button>{' '}
          {sharedText(shares, names)}
        </p>
      ) : null}
      {toAdd.length > 0 ? (
        <Button tone="word" onClick={add}>
          Add what most evenings end with
        </Button>
      ) : null}
    </section>
  )
}
