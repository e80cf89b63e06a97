'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { dishColour, Plate } from '#app/_ui/plate.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { unreadText } from '#app/_words/recipe.ts'
import type { NewKey } from '#lib/recipes/draft.ts'
import type { DecimalMark } from '#lib/recipes/preview.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'
import { DishFold } from './dish-fold.tsx'
import { guessDecimal } from './first-draft.ts'
import { Flag } from './flag.tsx'
import {
  type CourseInDraft,
  changeCourse,
  changeDish,
  type DishInDraft,
  dishInDraft,
  type MenuDraft,
  moved,
  removeDish,
  sendDish,
} from './menu-draft.ts'
import { PasteBox } from './paste-box.tsx'
import css from './recipes.module.css'
import { Sources } from './sources.tsx'

interface Props {
  readonly menu: MenuDraft
  readonly covers: number
  readonly newKey: NewKey
  readonly onChange: (menu: MenuDraft) => void
}

/** The menu as it was understood: courses as plates, dishes with what is known of them, each word to be corrected. */
export function MenuPreview({ menu, covers, newKey, onChange }: Props) {
  const [arranging, setArranging] = useState(false)
  return (
    <>
      <ol className={css.courses}>
        {menu.courses.map((course, index) => (
          <CourseRow
            key={course.key}
            menu={menu}
            course={course}
            index={index}
            arranging={arranging}
            covers={covers}
            newKey={newKey}
            onChange={onChange}
          />
        ))}
      </ol>
      {menu.leftOver.length > 0 ? (
        <div className={css.leftOver}>
          <Flag word="Not used">these lines are in no course and no recipe:</Flag>
          <ul>
            {menu.leftOver.map((text, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines may be equal, and their order does not change
              <li key={at} className={css.leftLine}>
                {text}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      <span className={css.tools}>
        <Button tone="word" onClick={() => setArranging(!arranging)} aria-pressed={arranging}>
          {arranging ? 'Done rearranging' : 'Rearrange or remove'}
        </Button>
        <Button
          tone="word"
          onClick={() =>
            onChange({ ...menu, courses: [...menu.courses, { key: newKey(), name: 'A new course', welcome: false, dishes: [] }] })
          }
        >
          Add a course
        </Button>
      </span>
    </>
  )
}

interface RowProps extends Props {
  readonly course: CourseInDraft
  readonly arranging: boolean
}

function CourseRow({ menu, course, index, arranging, covers, newKey, onChange }: RowProps & { readonly index: number }) {
  return (
    <li className={css.course}>
      <Entry id={course.key}>
        <div className={css.plate}>
          <Plate size={56} colour={course.dishes.length > 0 ? dishColour(index) : null} />
        </div>
        <div className={css.middle}>
          <div className={css.courseHead}>
            <h3>
              <WordText
                display
                field="name"
                label={`Name of course ${index + 1}`}
                text={course.name}
                onWrite={(text) => {
                  if (text.trim() === '') return 'A course needs a name.'
                  onChange(changeCourse(menu, course.key, (before) => ({ ...before, name: text.trim().slice(0, 120) })))
                  return null
                }}
              />
            </h3>
            {course.welcome ? <span className={css.said}>before you sit down</span> : null}
            {arranging ? (
              <Moves
                name={course.name}
                isFirst={index === 0}
                isLast={index === menu.courses.length - 1}
                onMove={(by) => onChange({ ...menu, courses: moved(menu.courses, course.key, by) })}
                onRemove={() => onChange({ ...menu, courses: menu.courses.filter((each) => each.key !== course.key) })}
              />
            ) : null}
          </div>
          {course.dishes.length === 0 ? <p className={css.said}>No dish yet.</p> : null}
          <ul className={css.dishes}>
            {course.dishes.map((dish) => (
              <DishRow
                key={dish.key}
                menu={menu}
                course={course}
                dish={dish}
                arranging={arranging}
                covers={covers}
                newKey={newKey}
                onChange={onChange}
              />
            ))}
          </ul>
          <Button
            tone="word"
            aria-label={`Add a dish to ${course.name}`}
            onClick={() =>
              onChange(
                changeCourse(menu, course.key, (before) => ({
                  ...before,
                  dishes: [...before.dishes, dishInDraft('A new dish', null, 'name', '.', newKey)],
                })),
              )
            }
          >
            Add a dish
          </Button>
        </div>
      </Entry>
    </li>
  )
}

const BY: Readonly<Record<Exclude<DishInDraft['by'], 'name'>, string>> = {
  cut: 'cut out of a longer line: a dish of its own?',
  recipe: 'your menu does not name it; it was put in this course.',
}

function DishRow({ menu, course, dish, arranging, covers, newKey, onChange }: RowProps & { readonly dish: DishInDraft }) {
  const asking = dish.pasted !== null
  const name = dish.draft.name || 'This dish'
  const at = course.dishes.findIndex((each) => each.key === dish.key)
  const put = (change: (before: DishInDraft) => DishInDraft) => onChange(changeDish(menu, dish.key, change))
  const rename = (text: string): string | null => {
    const next = text.trim().slice(0, 120)
    if (next === '') return 'A dish needs a name.'
    put((before) =>
      before.hasRecipe
        ? { ...before, by: 'name', draft: { ...before.draft, name: next } }
        : { ...dishInDraft(next, null, 'name', '.', newKey), key: before.key },
    )
    return null
  }
  return (
    <li className={css.dish}>
      <Entry id={dish.key}>
        <DishFold
          draft={dish.draft}
          hasRecipe={dish.hasRecipe}
          covers={covers}
          newKey={newKey}
          startOpen={false}
          onChange={(draft) => put((before) => ({ ...before, draft }))}
        >
          <div className={css.dishHead}>
            <WordText display long field="name" label={`Name of the dish ${name}`} text={dish.draft.name} onWrite={rename} />
            {arranging ? (
              <Moves
                name={name}
                isFirst={at === 0}
                isLast={at === course.dishes.length - 1}
                onMove={(by) =>
                  onChange(
                    changeCourse(menu, course.key, (before) => ({ ...before, dishes: moved(before.dishes, dish.key, by) })),
                  )
                }
                onRemove={() => onChange(removeDish(menu, dish.key))}
                into={menu.courses.filter((each) => each.key !== course.key).map((each) => [each.key, each.name] as const)}
                onInto={(to) => onChange(sendDish(menu, dish.key, to))}
              />
            ) : null}
          </div>
          {dish.by === 'name' ? null : (
            <div className={css.asked}>
              <Flag word="Guessed">{BY[dish.by]}</Flag>
              <Button
                tone="word"
                onClick={() => put((before) => ({ ...before, by: 'name' }))}
                aria-label={`${name}: yes, it is a dish here`}
              >
                Yes
              </Button>
              <Button tone="word" onClick={() => onChange(removeDish(menu, dish.key))} aria-label={`${name}: no, leave it out`}>
                No, leave it out
              </Button>
            </div>
          )}
        </DishFold>
        {dish.hasRecipe ? null : (
          <>
            <button
              type="button"
              className={css.opener}
              aria-expanded={asking}
              aria-label={`Paste a recipe for ${name}`}
              onClick={() => put((before) => ({ ...before, pasted: asking ? null : '' }))}
            >
              {asking ? 'No recipe for now' : 'Paste its recipe'}
            </button>
            {dish.pasted !== null ? (
              <OneRecipe
                name={name}
                text={dish.pasted}
                onText={(pasted) => put((before) => ({ ...before, pasted }))}
                newKey={newKey}
                onDish={(read) =>
                  put((before) => ({ ...read, key: before.key, by: 'name', draft: { ...read.draft, name: before.draft.name } }))
                }
              />
            ) : null}
          </>
        )}
      </Entry>
    </li>
  )
}

/** The recipe of one dish, by paste, file or address. */
function OneRecipe({
  name,
  text,
  onText,
  newKey,
  onDish,
}: {
  readonly name: string
  readonly text: string
  readonly onText: (text: string) => void
  readonly newKey: NewKey
  readonly onDish: (dish: DishInDraft) => void
}) {
  const [said, setSaid] = useState<DecimalMark | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const decimal = said ?? guessDecimal(text)
  const take = (words: string, source: string | null): string | null => {
    const mark = source === null && words === text ? decimal : guessDecimal(words)
    const paste = readPaste(words, mark)
    if (!paste.ok) return unreadText(paste.error)
    const [recipe] = paste.value.recipes
    if (!recipe) return 'There is no recipe in this: it needs a list of ingredients, then what is done.'
    const dish = dishInDraft(name, recipe, 'name', mark, newKey)
    onDish({ ...dish, draft: { ...dish.draft, source } })
    return null
  }
  return (
    <div className={css.one}>
      <PasteBox
        label={`The recipe of ${name}`}
        hint="Its ingredients, then what is done."
        text={text}
        onText={(next) => {
          onText(next)
          setWrong(null)
        }}
        decimal={decimal}
        onDecimal={setSaid}
        seen={null}
        wrong={wrong}
      />
      <Button tone="soft" disabled={text.trim() === ''} onClick={() => setWrong(take(text, null))}>
        Read this recipe
      </Button>
      <Sources named={` for ${name}`} onText={take} />
    </div>
  )
}
