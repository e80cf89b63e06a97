'use client'

import { useParams, useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankCourse } from '#app/_menu/blank.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import { unreadText } from '#app/_words/recipe.ts'
import { coversOf } from '#lib/domain/portions.ts'
import { type Brought, bringDishes } from '#lib/plan/commands/bring.ts'
import type { DecimalMark } from '#lib/recipes/preview.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'
import { DishPreview, OpenThings } from './dish-preview.tsx'
import { guessDecimal } from './first-draft.ts'
import { browserShelf, openKept, useKept } from './kept.ts'
import { type DishInDraft, dishInDraft, madeOf } from './menu-draft.ts'
import { PasteBox } from './paste-box.tsx'
import css from './recipes.module.css'
import { Sources } from './sources.tsx'
import { useReading } from './use-reading.ts'

interface ComingDish extends DishInDraft {
  /** null: a course of its own. */
  readonly course: string | null
}

interface Coming {
  readonly paste: string
  readonly decimal: DecimalMark | null
  readonly dishes: readonly ComingDish[]
  readonly readFrom: string
  readonly isCorrected: boolean
}

const VERSION = 1
const START: Coming = { paste: '', decimal: null, dishes: [], readFrom: '', isCorrected: false }
const rescue = (old: unknown): Coming => {
  const paste: unknown = typeof old === 'object' && old !== null ? Reflect.get(old, 'paste') : null
  return typeof paste === 'string' ? { ...START, paste } : START
}

const NEW = 'new'

/** A recipe, or several, for an evening that stands: pasted, from a file or from the web; looked over, then put on the menu. */
export function RecipeScreen() {
  const { evening, me } = usePlan()
  const { change } = useEdit()
  const router = useRouter()
  const id = String(useParams().id ?? evening.id)
  const wanted = useSearchParams().get('course')
  const [kept] = useState(() => openKept(browserShelf(), `tableward:recipe:${id}`, VERSION, START, rescue))
  const { value: coming, isKept } = useKept(kept, START)
  const [unread, setUnread] = useState<string | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const put = (patch: Partial<Coming>) => kept.set({ ...kept.get(), ...patch })
  const decimal = coming.decimal ?? guessDecimal(coming.paste)
  const first = evening.courses.find((course) => course.id === wanted)?.id ?? evening.courses.at(-1)?.id ?? null

  const dishesIn = (text: string, mark: DecimalMark, source: string | null) => {
    const found = readPaste(text, mark)
    if (!found.ok) return { wrong: unreadText(found.error), dishes: [] }
    const dishes = found.value.courses.flatMap((course) =>
      course.dishes.map((dish): ComingDish => {
        const recipe = dish.recipe === null ? null : (found.value.recipes[dish.recipe] ?? null)
        const made = dishInDraft(dish.name, recipe, dish.by, mark, newId)
        return { ...made, draft: { ...made.draft, source: recipe ? source : null }, course: first }
      }),
    )
    return { wrong: null, dishes }
  }
  const read = (paste: string) => {
    const { wrong, dishes } = paste.trim() === '' ? { wrong: null, dishes: [] } : dishesIn(paste, decimal, null)
    setUnread(wrong)
    put({ dishes, readFrom: paste, isCorrected: false })
  }
  const busy = useReading(coming.paste, `${decimal} ${coming.isCorrected}`, (paste) => {
    const now = kept.get()
    if (!now.isCorrected && now.readFrom !== paste) read(paste)
  })
  const bring = (text: string, source: string | null): string | null => {
    const { wrong, dishes } = dishesIn(text, guessDecimal(text), source)
    if (wrong === null) put({ dishes: [...kept.get().dishes, ...dishes], isCorrected: true })
    return wrong
  }
  const correct = (key: string, changed: (dish: ComingDish) => ComingDish) =>
    put({ dishes: kept.get().dishes.map((dish) => (dish.key === key ? changed(dish) : dish)), isCorrected: true })

  const addAll = () => {
    const { dishes } = kept.get()
    const own = newId()
    const needsOwn = dishes.some((dish) => !evening.courses.some((course) => course.id === dish.course))
    const brought = dishes.map((dish): Brought => {
      const course = evening.courses.some((each) => each.id === dish.course) ? (dish.course ?? own) : own
      const made = madeOf(dish, { course, kitchen: evening.host, order: '0', covers: coversOf(evening, course), newId })
      return { dish: made.dish, steps: made.steps, ingredients: made.ingredients }
    })
    const course = { ...blankCourse(own), name: evening.courses.length === 0 ? 'Main' : 'A new course' }
    const problem = change((doc) => bringDishes(doc, needsOwn ? [course] : [], brought))
    setRefused(problem)
    if (problem !== null) return
    kept.clear()
    const [only] = brought
    router.push(brought.length === 1 && only ? `/evenings/${id}/menu/${only.dish.id}` : `/evenings/${id}/menu`)
  }

  const courses = [...evening.courses.map((course) => [course.id, course.name] as const), [NEW, 'a new course'] as const]
  return (
    <main id="main" className={css.page}>
      <Ready />
      <div>
        <h1>Bring a recipe in</h1>
        <p className={css.said}>Nothing of it is on the menu before you put it there.</p>
      </div>
      <section aria-label="The recipe’s text" className={css.found}>
        <PasteBox
          label="Paste a recipe"
          hint="Its ingredients, then what is done. Several, one after the other, are several dishes."
          text={coming.paste}
          onText={(paste) => put({ paste })}
          decimal={decimal}
          onDecimal={(next) => put({ decimal: next, ...(coming.isCorrected ? {} : { readFrom: '' }) })}
          seen={
            busy ? 'Reading…' : coming.dishes.length > 0 ? sentence(`${countOf(coming.dishes.length, 'dish', 'dishes')}.`) : null
          }
          wrong={unread}
        />
        <Sources named="" onText={bring} />
        <p className={css.said} role="status">
          {isKept
            ? 'What you write here is kept on this device only, until it is on the menu.'
            : 'This device keeps nothing: what you write here is gone when you leave the page.'}
        </p>
        {coming.isCorrected && coming.readFrom !== coming.paste ? (
          <Notice tone="quiet">
            The text above has changed since you corrected what stands below.{' '}
            <Button tone="word" onClick={() => read(coming.paste)}>
              Read it again, without my corrections
            </Button>
          </Notice>
        ) : null}
      </section>
      {coming.dishes.map((dish) => (
        <section key={dish.key} aria-label={dish.draft.name || 'A dish'} className={css.wide}>
          <Cloth>
            <h2>
              <WordText
                display
                long
                field={`name ${dish.key}`}
                label={`Name of the dish ${dish.draft.name}`}
                text={dish.draft.name}
                empty="What is it called?"
                onWrite={(text) => {
                  if (text.trim() === '') return 'A dish needs a name.'
                  correct(dish.key, (before) => ({ ...before, draft: { ...before.draft, name: text.trim().slice(0, 120) } }))
                  return null
                }}
              />
            </h2>
            <p className={css.words}>
              It goes into{' '}
              <WordChoice
                label={`Course of ${dish.draft.name}`}
                value={evening.courses.some((course) => course.id === dish.course) ? (dish.course ?? NEW) : NEW}
                options={courses}
                onChoose={(course) => correct(dish.key, (before) => ({ ...before, course: course === NEW ? null : course }))}
              />
              . <OpenThings draft={dish.draft} />{' '}
              <Button
                tone="quiet"
                onClick={() => put({ dishes: kept.get().dishes.filter((each) => each.key !== dish.key), isCorrected: true })}
                aria-label={`Leave out ${dish.draft.name}`}
              >
                Leave it out
              </Button>
            </p>
            <DishPreview
              heading="h3"
              draft={dish.draft}
              covers={coversOf(evening, dish.course ?? '')}
              newKey={newId}
              onChange={(draft) => correct(dish.key, (before) => ({ ...before, draft }))}
            />
          </Cloth>
        </section>
      ))}
      <div className={css.make}>
        {refused ? <Notice>{refused}</Notice> : null}
        <span className={css.choices}>
          <Button large disabled={coming.dishes.length === 0 || me === null} onClick={addAll}>
            {coming.dishes.length > 1 ? 'Put them on the menu' : 'Put it on the menu'}
          </Button>
          <LinkButton href={`/evenings/${id}/menu`} tone="soft" large>
            Back to the menu
          </LinkButton>
        </span>
      </div>
    </main>
  )
}
