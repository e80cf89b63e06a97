'use client'

import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { alarmDishes, comingDishes } from './happening.ts'

interface Props {
  readonly label: string
  readonly value: string
  readonly onChoose: (dish: string) => void
  /** Also those that are on the table already. */
  readonly all?: boolean
}

/** One of the dishes that are still to come, or of all of them; those of each course together. */
export function DishChoice({ label, value, onChoose, all = false }: Props) {
  const { evening, names } = useNight()
  return (
    <WordChoice
      label={label}
      value={value}
      options={(all ? alarmDishes(evening) : comingDishes(evening)).map(
        ({ id, course }) => [id, names.dishName(id), names.courseName(course)] as const,
      )}
      onChoose={onChoose}
    />
  )
}
