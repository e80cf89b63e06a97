'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { NEED_CHOICES } from '#app/_words/need-choices.ts'
import { alarmText } from '#app/_words/night-alarm.ts'
import { ALARM_TODO } from '#app/_words/night-moment.ts'
import { DishChoice } from './dish-choice.tsx'
import { alarmDishes } from './happening.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'

const NOT_KNOWN = ''
const OPTIONS = [
  [NOT_KNOWN, 'something, not known what'] as const,
  ...NEED_CHOICES.filter(([, , group]) => group !== 'A way of eating'),
  ...NEED_CHOICES.filter(([, , group]) => group === 'A way of eating'),
]

/** An allergen got into a dish: everybody here is told at once, and until they have said that they heard it, it stands above all else. */
export function AllergenIn({ onTaken }: PathProps) {
  const { evening, names, tell, cook } = useNight()
  const dishes = alarmDishes(evening)
  const [chosen, setChosen] = useState<string | null>(null)
  const [need, setNeed] = useState(NOT_KNOWN)
  const dish = dishes.find(({ id }) => id === chosen) ?? dishes[0]
  if (!dish) return <p>No dish is on the menu.</p>
  const wanted = need === NOT_KNOWN ? null : need
  return (
    <>
      <p className={css.sentence}>
        Into <DishChoice label="Which dish it got into" value={dish.id} onChoose={setChosen} all /> got{' '}
        <WordChoice label="What got in" value={need} options={OPTIONS} onChoose={setNeed} />.
      </p>
      <button
        type="button"
        className={css.alarm}
        onClick={() => {
          tell({ kind: 'alarm', alarm: newId(), dish: dish.id, need: wanted }, cook ?? undefined)
          onTaken()
        }}
      >
        <b>Tell everybody</b>
        <span>{alarmText(dish.id, wanted, names)}</span>
      </button>
      <ol className={css.todo}>
        {ALARM_TODO.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
    </>
  )
}
