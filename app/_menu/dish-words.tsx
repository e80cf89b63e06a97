'use client'

import { Here } from '#app/_frame/here.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Link } from '#app/_ui/link.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { stateWords } from '#app/_words/care.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { renameDish, setFields } from '#lib/plan/commands/set.ts'
import type { DishAbout } from './dish-about.ts'
import css from './menu.module.css'
import type { MenuMoves } from './use-menu-moves.ts'

const STATES = Object.entries(stateWords).map(([state, words]) => [state as Dish['state'], words] as const)

interface Props {
  readonly dish: Dish
  readonly about: DishAbout
  readonly href: string
  readonly moves: MenuMoves
  readonly isFresh: boolean
  readonly isFirst: boolean
  readonly isLast: boolean
}

/** A dish while the menu is changed: its name, whether it is on, its method, where it goes. */
export function DishWords({ dish, about, href, moves, isFresh, isFirst, isLast }: Props) {
  const { evening } = usePlan()
  const { change, removeWithStrip } = useEdit()
  const elsewhere = evening.courses.filter((course) => course.id !== dish.course)
  return (
    <div className={css.dishWords}>
      <div className={css.dishName}>
        <WordText
          display
          long
          autoFocus={isFresh}
          field="name"
          label={`Name of the dish ${dish.name}`}
          text={dish.name}
          onWrite={(text) =>
            text.trim() ? change((doc) => renameDish(doc, dish.id, cleanText(text.trim(), false))) : 'A dish needs a name.'
          }
        />
        <Here target={dish.id} />
      </div>
      <div className={css.dishTools}>
        <span>
          <WordChoice
            label={`Whether ${dish.name} is on the menu`}
            value={dish.state}
            options={STATES}
            onChoose={(state) => change((doc) => setFields(doc, 'dishes', dish.id, { state }))}
          />
          ,{' '}
          <Link href={href} aria-label={`Method of ${dish.name}`}>
            {about.steps}
          </Link>
        </span>
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
      </div>
    </div>
  )
}
