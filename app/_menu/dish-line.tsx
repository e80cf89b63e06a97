'use client'

import Link from 'next/link'
import { useParams } from 'next/navigation'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { Stitches } from '#app/_ui/stitches.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { stateWords } from '#app/_words/care.ts'
import { clockText, countOf, dayName, dayOf } from '#app/_words/clock.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { renameDish } from '#lib/plan/commands/set.ts'
import css from './menu.module.css'
import type { MenuMoves } from './use-menu-moves.ts'

interface Props {
  readonly dish: Dish
  readonly editing: boolean
  readonly moves: MenuMoves
  readonly isFresh: boolean
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly minutes: number | null
  readonly begins: number | null
}

/** One dish of the menu: a way to its method, when work on it begins, who has it, its last-minute minutes. */
export function DishLine({ dish, editing, moves, isFresh, isFirst, isLast, minutes, begins }: Props) {
  const { evening } = usePlan()
  const { change, removeWithStrip } = useEdit()
  const id = String(useParams().id ?? evening.id)
  const steps = evening.steps.filter((step) => step.dish === dish.id)
  const href = `/evenings/${id}/menu/${dish.id}`

  const elsewhere = evening.courses.filter((course) => course.id !== dish.course)

  return (
    <li {...moves.dishes.item(dish.id, `${css.dish} ${editing ? css.changing : ''}`)}>
      {editing ? moves.dishes.handle(dish.id) : null}
      {editing ? (
        <span className={css.dishName}>
          <WordText
            display
            long
            autoFocus={isFresh}
            label={`Name of the dish ${dish.name}`}
            text={dish.name}
            onWrite={(text) =>
              text.trim() ? change((doc) => renameDish(doc, dish.id, cleanText(text.trim(), false))) : 'A dish needs a name.'
            }
          />
          <Link className={css.method} href={href} aria-label={`Method of ${dish.name}`}>
            {steps.length === 0 ? 'write its method' : countOf(steps.length, 'step')}
          </Link>
        </span>
      ) : (
        <Link className={css.dishLink} href={href}>
          {dish.name}
          <small>
            {dish.state === 'on' ? aboutOf(begins, evening.date, evening.zone, steps.length) : stateWords[dish.state]}
          </small>
        </Link>
      )}
      {editing ? (
        <Moves
          name={dish.name}
          isFirst={isFirst}
          isLast={isLast}
          onMove={(by) => moves.dishBy(dish.id, by)}
          into={elsewhere.map((course) => [course.id, course.name || 'a course without a name'])}
          onInto={(course) => moves.dishInto(dish.id, course)}
          focus={moves.fresh?.id === dish.id ? moves.fresh.by : null}
          onRemove={() => removeWithStrip('dishes', dish.id, dish.name)}
        />
      ) : null}
      {editing ? null : (
        <>
          <span className={css.who}>
            <ClaimLine target={dish.id} name={dish.name} />
          </span>
          <span className={css.minutes}>
            <span className={css.minutesLabel}>Last-minute minutes: </span>
            {minutes === null ? <span className={css.quiet}>not planned yet</span> : <Stitches minutes={minutes} />}
          </span>
        </>
      )}
    </li>
  )
}

const aboutOf = (begins: number | null, date: string, zone: string, steps: number): string => {
  if (steps === 0) return 'no method yet'
  if (begins === null) return countOf(steps, 'step')
  const day = dayOf({ date, zone }, begins)
  return day < 0 ? `begun ${dayName(date, day)}` : `from ${clockText(begins, zone)}`
}
