'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { listText, sentence } from '#app/_words/clock.ts'
import { drinkKindWords, pairingWords } from '#app/_words/pairing.ts'
import type { Course } from '#lib/domain/menu.ts'
import type { Drink } from '#lib/domain/people.ts'
import { type Suggestion, suggestions } from '#lib/drinks/pairing.ts'
import { addDrink } from '#lib/plan/commands/add.ts'
import css from './drinks.module.css'

const MOST = 3

interface Props {
  readonly course: Course
  readonly sort: Drink['role']
  /** There is one already: others stand folded. */
  readonly folded: boolean
}

/** Kinds that would go with the course, by principle, each with its reason; one tap puts one on the menu. */
export function Offer({ course, sort, folded }: Props) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const found = suggestions(evening, course.id, sort).slice(0, MOST)
  const pour = ({ kind, because: _, ...drink }: Suggestion) =>
    tell((doc) => addDrink(doc, { ...drink, id: newId(), course: course.id, name: drinkKindWords[kind] }))
  if (found.length === 0)
    return folded ? null : (
      <p className={css.quiet}>The dishes do not say yet what would go with them: give them names and ingredients.</p>
    )
  const list = (
    <ul>
      {found.map((each) => (
        <li key={each.kind} className={css.offer}>
          <span>
            <b className={css.offerName}>{drinkKindWords[each.kind]}</b>
            <small className={css.about}>
              {sentence(listText(each.because.slice(0, 3).map((because) => pairingWords[because])))}.
            </small>
          </span>
          <Button tone="word" onClick={() => pour(each)} aria-label={`Pour ${drinkKindWords[each.kind]} with ${course.name}`}>
            Pour this
          </Button>
        </li>
      ))}
    </ul>
  )
  return folded ? <Fold title="What else would go with it">{list}</Fold> : list
}
