'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Ticks } from '#app/_ui/ticks.tsx'
import { allergenWords } from '#app/_words/food.ts'
import { labelText } from '#app/_words/shopping.ts'
import { Allergen } from '#lib/domain/ingredient.ts'
import { ok } from '#lib/domain/result.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { noteLine } from '#lib/plan/commands/shop.ts'
import type { Line } from '#lib/shopping/line.ts'
import css from './shopping.module.css'

const OPTIONS = Allergen.options.map((word) => [word, allergenWords[word]] as const)

/**
 * A label that somebody has to read in the shop. All that it names is told, not only what is looked for: "read" says that nothing else is in it.
 */
export function LabelRead({ line }: { readonly line: Line }) {
  const { evening, me, now } = usePlan()
  const { tell } = useEdit()
  const ids = new Set(line.labels.map(({ ingredient }) => ingredient))
  const ingredients = evening.ingredients.filter(({ id }) => ids.has(id))
  const ticked = Allergen.options.filter((word) => ingredients.some(({ allergens }) => allergens.includes(word)))
  if (ingredients.length === 0) return null
  const named = (words: readonly Allergen[]) => (doc: Parameters<typeof setFields>[0]) => {
    for (const { id } of ingredients) {
      const set = setFields(doc, 'ingredients', id, { allergens: [...words] })
      if (!set.ok) return set
    }
    return ok(null)
  }
  const turn = (word: Allergen) =>
    tell(named(Allergen.options.filter((each) => (each === word ? !ticked.includes(word) : ticked.includes(each)))))
  const read = () =>
    tell((doc) => {
      for (const { id } of ingredients) {
        const set = setFields(doc, 'ingredients', id, { allergens: [...ticked], checked: 'known', labelRules: evening.rules })
        if (!set.ok) return set
      }
      const by = me?.cook ? { by: me.cook } : {}
      return noteLine(doc, line.key, newId(), { read: { ...by, at: new Date(now()).toISOString() } })
    })
  return (
    <div className={css.label}>
      <p>
        <b>{labelText(line)}</b> Tick all that the label names, in the list and in “may contain”.
      </p>
      <Ticks legend={`On the label of ${line.food}`} options={OPTIONS} ticked={ticked} onTick={turn} />
      <p>
        <Button tone="soft" onClick={read} aria-label={`The label is read: ${line.food}`}>
          That is all it names
        </Button>
      </p>
      <p className={css.quiet}>Until then it counts as not known, which is never safe.</p>
    </div>
  )
}
