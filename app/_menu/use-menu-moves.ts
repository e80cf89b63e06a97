'use client'

import { useState } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { type Drag, useDrag } from '#app/_ui/drag.tsx'
import { numberAt, placeAfterMove } from '#app/_ui/move-place.ts'
import { movedText } from '#app/_words/moved.ts'
import { moveCourse, moveDish } from '#lib/plan/commands/move.ts'
import type { Place } from '#lib/plan/order-keys.ts'

export interface MenuMoves {
  readonly courses: Drag
  readonly dishes: Drag
  readonly courseBy: (id: string, by: -1 | 1) => void
  readonly dishBy: (id: string, by: -1 | 1) => void
  readonly dishInto: (id: string, course: string) => void
  /** The dish that a button has just taken to another course, and that button. */
  readonly fresh: { readonly id: string; readonly by: -1 | 1 } | null
}

/** Ordering the menu, by pointer and by buttons: both write the same move and say where the thing is now. */
export const useMenuMoves = (): MenuMoves => {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const [fresh, setFresh] = useState<MenuMoves['fresh']>(null)

  const course = (id: string, place: Place): string | null => {
    if (!tell((doc) => moveCourse(doc, id, place))) return null
    const { courses } = evening
    return movedText(nameOf(courses, id), numberAt(courses, id, place), courses.length)
  }
  const dish = (id: string, into: string, place: Place): string | null => {
    if (!tell((doc) => moveDish(doc, id, into, place))) return null
    const there = evening.dishes.filter((other) => other.course === into)
    const count = there.some((other) => other.id === id) ? there.length : there.length + 1
    return movedText(nameOf(evening.dishes, id), numberAt(there, id, place), count, nameOf(evening.courses, into))
  }
  const courses = useDrag((drop) => course(drop.id, drop.place))
  const dishes = useDrag((drop) => dish(drop.id, drop.list, drop.place))

  return {
    courses,
    dishes,
    fresh,
    courseBy: (id, by) => {
      const place = placeAfterMove(evening.courses, id, by)
      if (place) courses.say(course(id, place) ?? '')
    },
    dishBy: (id, by) => {
      const from = evening.dishes.find((other) => other.id === id)?.course
      const place = placeAfterMove(
        evening.dishes.filter((other) => other.course === from),
        id,
        by,
      )
      if (from !== undefined && place) return dishes.say(dish(id, from, place) ?? '')
      // At the edge of its course, a dish goes on into the next one.
      const next = evening.courses[evening.courses.findIndex((candidate) => candidate.id === from) + by]
      if (!next) return
      setFresh({ id, by })
      dishes.say(dish(id, next.id, by === 1 ? { kind: 'first' } : { kind: 'last' }) ?? '')
    },
    dishInto: (id, into) => {
      setFresh({ id, by: 1 })
      dishes.say(dish(id, into, { kind: 'last' }) ?? '')
    },
  }
}

const nameOf = (all: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  all.find((one) => one.id === id)?.name ?? ''
