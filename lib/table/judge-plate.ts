import type { Ingredient, Rules } from '#lib/domain/ingredient.ts'
import type { Item } from './item.ts'
import { judgeItem, saidOf } from './judge-item.ts'
import { type Away, awayOf, isAllergyGrade, isFor, sameNeed } from './need.ts'
import { readFood } from './read-food.ts'
import type { Trait } from './trait.ts'
import type { Because, Change, Need, Verdict } from './verdict.ts'

/** All that is on a plate, and what is known of how it is made. */
export interface Plate {
  readonly items: readonly Item[]
  readonly rules: Rules
  /** Needs that its cook has confirmed for what it is made of now. */
  readonly confirmed: readonly string[]
  /** Needs that were confirmed before it was made of something else. */
  readonly changedSince: readonly string[]
  /** The kitchen of somebody else where it is made; null in the hosts' own. */
  readonly otherKitchen: string | null
  /** Severe needs that the plan guards; null where there is no plan to look at. */
  readonly guarded: readonly string[] | null
}

interface ForNeed {
  readonly wrong: readonly Because[]
  readonly open: readonly Because[]
  readonly told: readonly Because[]
  readonly changes: readonly Change[]
}

/** Whether the ingredient surely is, or has, one of these. */
export const surelyHas = ({ ingredient }: Item, trait: Trait, rules: Rules): boolean =>
  saidOf(ingredient).has(trait) || readFood(ingredient.food, rules).has.has(trait)

const meatWithMilk = (plate: Plate, need: Need, away: Away): Because[] => {
  if (away.need !== 'kosher') return []
  const has = (...traits: readonly Trait[]) =>
    plate.items.some((item) => traits.some((trait) => surelyHas(item, trait, plate.rules)))
  return has('meat', 'poultry') && has('milk') ? [{ kind: 'together', need: need.need, source: away.source }] : []
}

/** Who would rather not have it can eat it: it is told. */
const disliked = (need: Need, wrong: readonly Because[]): ForNeed => ({
  wrong: [],
  open: [],
  told: wrong.flatMap((each) =>
    each.kind === 'has' ? [{ kind: 'dislikes', ingredient: each.ingredient, need: need.need, trait: each.trait }] : [],
  ),
  changes: [],
})

/** What the plate comes to for one of somebody's needs. `swaps`: swaps made for any of them. */
const forNeed = (plate: Plate, need: Need): ForNeed => {
  const away = awayOf(need.need, plate.rules)
  const wrong: Because[] = [...meatWithMilk(plate, need, away)]
  const open: Because[] = []
  const told: Because[] = []
  const changes: Change[] = []
  const isConfirmed = plate.confirmed.some((word) => sameNeed(word) === away.need)
  for (const item of plate.items) {
    const judged = judgeItem(item, need, away, plate.rules)
    const { swap } = item.ingredient
    told.push(...judged.told)
    if (judged.wrong.length > 0 && swap && isFor(swap.for, need.need))
      changes.push({ kind: 'swap', ingredient: item.ingredient.id, food: swap.food, need: need.need })
    else wrong.push(...judged.wrong)
    // Its cook has asked for what a label does not tell.
    open.push(...judged.open.filter((each) => !isConfirmed || each.kind !== 'hidden'))
  }
  if (need.grade === 'dislikes') return disliked(need, wrong)
  if (plate.items.length === 0) open.push({ kind: 'no-ingredients', need: need.need })
  if (away.beyond && !isConfirmed) open.push({ kind: 'beyond', need: need.need, source: away.source })
  if (plate.changedSince.some((word) => sameNeed(word) === away.need)) open.push({ kind: 'changed-since', need: need.need })
  if (plate.otherKitchen !== null && isAllergyGrade(need.grade) && !isConfirmed)
    open.push({ kind: 'other-kitchen', need: need.need, kitchen: plate.otherKitchen })
  if (need.grade === 'severe' && plate.guarded?.every((word) => sameNeed(word) !== away.need))
    changes.push({ kind: 'guard', need: need.need })
  return { wrong, open, told, changes }
}

/** A food that comes in by a swap is looked at like any other, for every need; for the one it is meant for only its name can speak against it. */
const swapTroubles = (plate: Plate, changes: readonly Change[], needs: readonly Need[]): Pick<ForNeed, 'wrong' | 'open'> => {
  const wrong: Because[] = []
  const open: Because[] = []
  for (const change of changes) {
    const item = change.kind === 'swap' ? plate.items.find(({ ingredient }) => ingredient.id === change.ingredient) : undefined
    if (change.kind !== 'swap' || change.food === '' || !item) continue
    const { swap: _swap, abv: _abv, labelRules: _labelRules, ...rest } = item.ingredient
    const ingredient: Ingredient = {
      ...rest,
      food: change.food,
      allergens: [],
      contains: [],
      suits: item.ingredient.swap?.for ?? [],
      checked: 'unknown',
    }
    for (const need of needs) {
      const judged = judgeItem({ ...item, ingredient }, need, awayOf(need.need, plate.rules), plate.rules)
      const isMeant = isFor(item.ingredient.swap?.for ?? [], need.need)
      wrong.push(...judged.wrong)
      open.push(...judged.open.filter((each) => !isMeant || (each.kind === 'unknown' && each.look.length > 0)))
    }
  }
  return { wrong, open }
}

const unique = <T>(list: readonly T[]): T[] => {
  const seen = new Set<string>()
  return list.filter((each) => {
    const key = JSON.stringify(each)
    return !seen.has(key) && Boolean(seen.add(key))
  })
}

/** The plate for somebody with all these needs at once; null needs: nobody has asked, which is never safe. */
export const judgePlate = (plate: Plate, needs: readonly Need[] | null): Verdict => {
  if (needs === null) return { kind: 'not-confirmed', because: [{ kind: 'not-asked' }] }
  const each = needs.map((need) => forNeed(plate, need))
  const changes = unique(each.flatMap((one) => one.changes))
  const swapped = swapTroubles(plate, changes, needs)
  const wrong = unique([...each.flatMap((one) => one.wrong), ...swapped.wrong])
  const open = unique([...each.flatMap((one) => one.open), ...swapped.open])
  const told = unique(each.flatMap((one) => one.told))
  const kind = wrong.length > 0 ? 'does-not' : open.length > 0 ? 'not-confirmed' : changes.length > 0 ? 'with-change' : 'fits'
  return { kind, because: [...wrong, ...open, ...told], ...(changes.length > 0 ? { change: changes } : {}) }
}
