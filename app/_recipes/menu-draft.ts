import { blankCourse } from '#app/_menu/blank.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Course } from '#lib/domain/menu.ts'
import { spreadKeys } from '#lib/plan/order-keys.ts'
import { defaultDraft } from '#lib/recipes/default-method.ts'
import { type DishDraft, draftOf, type NewKey } from '#lib/recipes/draft.ts'
import { type DishPlace, finishDraft, type MadeDish } from '#lib/recipes/make-dish.ts'
import type { DecimalMark, RecipePreview } from '#lib/recipes/preview.ts'
import { likest, type PastedDish, type ReadPaste } from '#lib/recipes/read-paste.ts'
import { notesOf } from './notes.ts'

export interface DishInDraft {
  readonly key: string
  readonly by: PastedDish['by']
  /** Whether anything but its name is known. */
  readonly hasRecipe: boolean
  /** What stands in the box for its recipe; null while there is no box. */
  readonly pasted: string | null
  readonly draft: DishDraft
}

export interface CourseInDraft {
  readonly key: string
  readonly name: string
  readonly welcome: boolean
  readonly dishes: readonly DishInDraft[]
}

/** A menu with its methods before there is an evening. Plain JSON. */
export interface MenuDraft {
  readonly courses: readonly CourseInDraft[]
  /** Lines that are in no course and no recipe. */
  readonly leftOver: readonly string[]
}

/** The dish of a recipe, or of its name alone. */
export const dishInDraft = (
  name: string,
  recipe: RecipePreview | null,
  by: PastedDish['by'],
  decimal: DecimalMark,
  newKey: NewKey,
): DishInDraft => ({
  key: newKey(),
  by,
  hasRecipe: recipe !== null,
  pasted: null,
  draft: recipe ? { ...draftOf(recipe, decimal, newKey), name } : defaultDraft(name, decimal, newKey),
})

export const menuDraftOf = (paste: ReadPaste, decimal: DecimalMark, newKey: NewKey): MenuDraft => ({
  courses: paste.courses.map((course) => ({
    key: newKey(),
    name: course.name,
    welcome: course.welcome,
    dishes: course.dishes.map((dish) =>
      dishInDraft(dish.name, dish.recipe === null ? null : (paste.recipes[dish.recipe] ?? null), dish.by, decimal, newKey),
    ),
  })),
  leftOver: paste.leftOver,
})

/** More recipes for a menu that stands: each to the dish without a recipe that its title names, else new in the main course. */
export const withRecipes = (
  menu: MenuDraft,
  recipes: readonly RecipePreview[],
  source: string | null,
  decimal: DecimalMark,
  newKey: NewKey,
): MenuDraft => recipes.reduce((before, recipe) => withRecipe(before, recipe, source, decimal, newKey), menu)

const withRecipe = (
  menu: MenuDraft,
  recipe: RecipePreview,
  source: string | null,
  decimal: DecimalMark,
  newKey: NewKey,
): MenuDraft => {
  const bare = menu.courses.flatMap((course) => course.dishes).filter((dish) => !dish.hasRecipe)
  const at = likest(
    recipe.title ?? '',
    bare.map((dish) => dish.draft.name),
  )
  const draft = { ...draftOf(recipe, decimal, newKey), source }
  const known = at === null ? undefined : bare[at]
  if (known) {
    const named = { ...draft, name: known.draft.name }
    return changeDish(menu, known.key, (dish) => ({ ...dish, hasRecipe: true, pasted: null, draft: named }))
  }
  const dish: DishInDraft = {
    key: newKey(),
    by: menu.courses.length === 0 ? 'name' : 'recipe',
    hasRecipe: true,
    pasted: null,
    draft,
  }
  const main = menu.courses.find((course) => /^mains?$/iu.test(course.name)) ?? menu.courses.at(-1)
  if (!main) return { ...menu, courses: [{ key: newKey(), name: 'Main', welcome: false, dishes: [dish] }] }
  return changeCourse(menu, main.key, (course) => ({ ...course, dishes: [...course.dishes, dish] }))
}

export const changeCourse = (menu: MenuDraft, key: string, change: (course: CourseInDraft) => CourseInDraft): MenuDraft => ({
  ...menu,
  courses: menu.courses.map((course) => (course.key === key ? change(course) : course)),
})

export const changeDish = (menu: MenuDraft, key: string, change: (dish: DishInDraft) => DishInDraft): MenuDraft => ({
  ...menu,
  courses: menu.courses.map((course) => ({
    ...course,
    dishes: course.dishes.map((dish) => (dish.key === key ? change(dish) : dish)),
  })),
})

export const removeDish = (menu: MenuDraft, key: string): MenuDraft => ({
  ...menu,
  courses: menu.courses.map((course) => ({ ...course, dishes: course.dishes.filter((dish) => dish.key !== key) })),
})

/** Puts a dish at the end of another course. */
export const sendDish = (menu: MenuDraft, key: string, to: string): MenuDraft => {
  const dish = menu.courses.flatMap((course) => course.dishes).find((each) => each.key === key)
  if (!dish) return menu
  return changeCourse(removeDish(menu, key), to, (course) => ({ ...course, dishes: [...course.dishes, { ...dish, by: 'name' }] }))
}

/** The list with the entry one place up or down. */
export const moved = <T extends { readonly key: string }>(list: readonly T[], key: string, by: -1 | 1): readonly T[] => {
  const at = list.findIndex((each) => each.key === key)
  const [one, other] = [list[at], list[at + by]]
  return one && other ? list.with(at, other).with(at + by, one) : list
}

type Placed = Pick<DishPlace, 'course' | 'kitchen' | 'order' | 'covers' | 'newId'>

/** The entries of one dish; what is open about it stands in its notes, so that nothing of the recipe is lost. */
export const madeOf = ({ draft, hasRecipe }: Pick<DishInDraft, 'draft' | 'hasRecipe'>, place: Placed): MadeDish => {
  const made = finishDraft(draft, { ...place, measures: draft.measures, decimal: draft.decimal, keys: spreadKeys })
  return { ...made, dish: { ...made.dish, notes: notesOf(draft, hasRecipe) } }
}

export interface Made extends Pick<Evening, 'courses' | 'dishes' | 'steps' | 'ingredients'> {
  readonly assumed: MadeDish['assumed']
}

/** The entries of an evening from a menu that a person has corrected. A course without a dish is a course all the same. */
export const entriesOf = (menu: MenuDraft, place: { covers: number; kitchen: string; newId: () => string }): Made => {
  const courseKeys = spreadKeys(menu.courses.length)
  const courses: Course[] = []
  const dishes: MadeDish[] = []
  for (const [at, course] of menu.courses.entries()) {
    const id = place.newId()
    const name = course.name.trim() || `Course ${at + 1}`
    courses.push({
      ...blankCourse(id),
      order: courseKeys[at] ?? '',
      name: name.slice(0, 120),
      ...(course.welcome ? { welcome: true as const } : {}),
    })
    const keys = spreadKeys(course.dishes.length)
    for (const [d, dish] of course.dishes.entries())
      dishes.push(
        madeOf(dish, {
          course: id,
          kitchen: place.kitchen,
          order: keys[d] ?? '',
          covers: place.covers,
          newId: place.newId,
        }),
      )
  }
  return {
    courses,
    dishes: dishes.map((each) => each.dish),
    steps: dishes.flatMap((each) => each.steps),
    ingredients: dishes.flatMap((each) => each.ingredients),
    assumed: dishes.flatMap((each) => each.assumed),
  }
}
