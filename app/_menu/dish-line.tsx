'use client'

import { ClaimLine } from '#app/_frame/claim.tsx'
import { Here } from '#app/_frame/here.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Stitches } from '#app/_ui/stitches.tsx'
import type { Dish } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import type { DishAbout } from './dish-about.ts'
import { DishWords } from './dish-words.tsx'
import css from './menu.module.css'
import type { MenuMoves } from './use-menu-moves.ts'

export interface DishRow {
  readonly dish: Dish
  readonly about: DishAbout
  /** Last-minute minutes; null when nothing is planned. */
  readonly minutes: number | null
}

interface Props {
  readonly row: DishRow
  readonly eveningId: string
  readonly editing: boolean
  readonly moves: MenuMoves
  readonly isFresh: boolean
  readonly isFirst: boolean
  readonly isLast: boolean
}

/** One dish of the menu: a way to its method, when work on it begins and the kit it wants, who has it, its last-minute minutes. */
export function DishLine({ row: { dish, about, minutes }, eveningId, editing, moves, isFresh, isFirst, isLast }: Props) {
  const { tell } = useEdit()
  const href = `/evenings/${eveningId}/menu/${dish.id}`
  if (editing) {
    return (
      <li {...moves.dishes.item(dish.id, css.changing)}>
        {moves.dishes.handle(dish.id)}
        <Entry id={dish.id}>
          <DishWords dish={dish} about={about} href={href} moves={moves} isFresh={isFresh} isFirst={isFirst} isLast={isLast} />
        </Entry>
      </li>
    )
  }
  return (
    <li className={`${css.dish} ${dish.state === 'on' ? '' : css.off}`}>
      <Link className={css.dishLink} href={href}>
        {dish.name}
        <Here target={dish.id} />
        {about.state ? <small>{about.state}</small> : null}
        {dish.state === 'on' ? <small>{about.kit ? `${about.when} · ${about.kit}` : about.when}</small> : null}
      </Link>
      <span className={css.who}>
        {dish.state === 'on' ? (
          <ClaimLine target={dish.id} name={dish.name} />
        ) : (
          <Button
            tone="word"
            onClick={() => tell((doc) => setFields(doc, 'dishes', dish.id, { state: 'on' }))}
            aria-label={`Bring back ${dish.name}`}
          >
            Bring it back
          </Button>
        )}
      </span>
      <span className={css.minutes}>
        {dish.state === 'on' ? (
          <>
            <span className={css.minutesLabel}>Last-minute minutes: </span>
            {minutes === null ? <span className={css.quiet}>not planned yet</span> : <Stitches minutes={minutes} />}
          </>
        ) : null}
      </span>
    </li>
  )
}
