import type { Evening } from '#lib/domain/evening.ts'
import type { Shown } from '#lib/plan/whereabouts.ts'
import { namesOf } from './names.ts'
import { shorten } from './shorten.ts'

/** Somebody as the others know them: the cook of the plan that they are, else the name of their account. */
export const companyName = (evening: Evening, { who }: Shown): string =>
  evening.cooks.find(({ id }) => id === who.cook)?.name ?? who.name

const SCREENS: Readonly<Record<string, string>> = {
  menu: 'is at the menu',
  order: 'is at the running order',
  kitchens: 'is with the cooks and kitchens',
  chores: 'is at the chores',
  recipe: 'brings a recipe in',
  tonight: 'is at the board',
  shopping: 'is at the shopping',
}

/** "Noor is at the roast potatoes": the dish counts before its course, for a step is found within it. */
export const companyText = (evening: Evening, shown: Shown): string => {
  const name = companyName(evening, shown)
  const names = namesOf(evening)
  const place = [...shown.at].reverse().flatMap((id) => {
    const step = evening.steps.find((one) => one.id === id)
    const dish = names.dish(step?.dish ?? id)
    if (dish) return [dish.name]
    if (step) return [step.does]
    const course = evening.courses.find((one) => one.id === id)
    const cook = evening.cooks.find((one) => one.id === id)
    const kitchen = evening.kitchens.find((one) => one.id === id)
    return course ? [course.name] : cook ? [cook.name] : kitchen ? [kitchen.name] : []
  })[0]
  if (place) return `${name} is at “${shorten(place, 40)}”`
  return `${name} ${SCREENS[shown.screen] ?? 'is here'}`
}

/** "Noor is here", "Noor and Sam are here". */
export const hereText = (names: readonly string[]): string =>
  names.length === 1 ? `${names[0]} is here` : `${names.slice(0, -1).join(', ')} and ${names.at(-1)} are here`
