'use client'

import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useNight } from '#app/_tonight/use-night.ts'
import { sentence } from '#app/_words/clock.ts'
import { comparedText } from '#app/_words/compare.ts'
import { movesBetween, moveText } from '#app/_words/moves.ts'
import { namesOf } from '#app/_words/names.ts'
import { answeredText, answerWords } from '#app/_words/night-moment.ts'
import { type Answer, editOf, tellsOf } from './answer.ts'
import css from './moments.module.css'
import { type AnswerPrice, usePrices } from './use-prices.ts'

interface Props {
  readonly asker: string
  readonly label: string
  /** The first is the one to take when in doubt. */
  readonly answers: readonly Answer[]
  readonly onTaken: () => void
}

/** What can be done, each with its price; one tap takes it. */
export function AnswerList({ asker, label, answers, onTaken }: Props) {
  const { evening, names, tell, cook } = useNight()
  const { undo } = usePlan()
  const { tell: edit } = useEdit()
  const show = useStrip()
  const priceOf = usePrices(asker, answers)
  const take = (answer: Answer) => {
    const change = editOf(evening, answer)
    if (change && !edit(change)) return
    for (const say of tellsOf(answer)) tell(say, cook ?? undefined)
    if (change) show(answeredText(answer, evening, names), undo)
    onTaken()
  }
  return (
    <ul className={css.answers} aria-label={label}>
      {answers.map((answer, index) => {
        const { title, about } = answerWords(answer, evening, names)
        return (
          <li key={JSON.stringify(answer)}>
            <button type="button" className={`${css.answer} ${index === 0 ? css.first : ''}`} onClick={() => take(answer)}>
              <b>{title}</b>
              <span>
                {about} <PriceLine price={priceOf(answer)} />
              </span>
            </button>
            <Moves price={priceOf(answer)} />
          </li>
        )
      })}
    </ul>
  )
}

const MOST = 3

/** The worst first, and what gets better only where nothing gets worse. */
function PriceLine({ price }: { readonly price: AnswerPrice }) {
  if (price.kind === 'trying') return <em>Its price is being worked out…</em>
  if (price.kind === 'unknown') return <em>Its price cannot be worked out here.</em>
  const { before, after, evening } = price.trial
  const { better, worse, same } = comparedText(before, after, namesOf(evening))
  if (same) return <em>Nothing else changes.</em>
  const said = worse.length > 0 ? worse : better
  if (said.length === 0) return <em>No course is later for it.</em>
  const more = said.length - MOST
  return (
    <em className={worse.length > 0 ? css.worse : css.better}>
      {sentence(said.slice(0, MOST).join('; '))}
      {more > 0 ? `; and ${more} more` : ''}.
    </em>
  )
}

function Moves({ price }: { readonly price: AnswerPrice }) {
  if (price.kind !== 'known') return null
  const { before, after, evening } = price.trial
  const moves = movesBetween(before, after)
  if (moves.length === 0) return null
  const names = namesOf(evening)
  return (
    <details className={css.moves}>
      <summary>{moves.length === 1 ? 'One step moves' : `${moves.length} steps move`}</summary>
      <ul>
        {moves.map((move) => {
          const words = moveText(move, names, evening.zone)
          return <li key={words}>{words}</li>
        })}
      </ul>
    </details>
  )
}
