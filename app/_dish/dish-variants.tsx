'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { listText } from '#app/_words/clock.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { shorten } from '#app/_words/shorten.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { coversOf } from '#lib/domain/portions.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { isWithout, variantOf } from '#lib/plan/copy-dish.ts'
import css from './dish.module.css'

interface Props {
  readonly dish: Dish
  readonly eveningId: string
}

/** The variants that a dish has, and a new one: for some of the covers, without something, from a step on. */
export function DishVariants({ dish, eveningId }: Props) {
  const { evening } = usePlan()
  const variants = evening.dishes.filter((other) => other.variant?.of === dish.id)
  const stepName = (id: string) => shorten(evening.steps.find((step) => step.id === id)?.does || 'a step without words', 40)
  return (
    <>
      {variants.map((other) => (
        <p key={other.id} className={css.variant}>
          {other.variant?.portions} of the {dish.portions ?? coversOf(evening, dish.course)} get{' '}
          <Link href={`/evenings/${eveningId}/menu/${other.id}`}>{other.name}</Link> instead
          {other.variant ? `, from after “${stepName(other.variant.fork)}”` : ''}
          {other.state === 'on' ? '' : ', which is not on the menu'}.
        </p>
      ))}
      {dish.variant ? null : <NewVariant dish={dish} eveningId={eveningId} />}
    </>
  )
}

function NewVariant({ dish, eveningId }: Props) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const router = useRouter()
  const [wanted, setWanted] = useState({ portions: 2, without: '', name: '' })
  const [chosen, setChosen] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const steps = evening.steps.filter((step) => step.dish === dish.id)
  const whole = dish.portions ?? coversOf(evening, dish.course)
  const fork = steps.find((step) => step.id === chosen) ?? steps[Math.max(0, Math.floor(steps.length / 2) - 1)]
  const common = new Set(steps.slice(0, steps.findIndex((step) => step.id === fork?.id) + 1).map((step) => step.id))
  const tooLate = evening.ingredients.filter(
    (each) => each.dish === dish.id && isWithout(each.food, wanted.without) && (each.step === undefined || common.has(each.step)),
  )
  const name = wanted.name || (wanted.without ? `${dish.name} without ${wanted.without}` : `${dish.name}, another way`)
  const make = () => {
    if (!fork) return
    const made = variantOf(
      evening,
      dish.id,
      { step: fork.id, portions: wanted.portions, name: name.slice(0, 120), without: wanted.without },
      newId,
    )
    const problem = made ? change((doc) => bringDish(doc, made, { kind: 'after', id: dish.id })) : 'This was removed meanwhile.'
    setWrong(problem)
    if (problem === null && made) router.push(`/evenings/${eveningId}/menu/${made.dish.id}`)
  }
  return (
    <Fold title="A variant for some">
      {steps.length < 2 || !fork ? (
        <p className={css.hint}>Write at least two steps first: a variant shares the first ones and has the others for itself.</p>
      ) : (
        <>
          <p className={css.words}>
            <WordText
              label="For how many the variant is"
              text={String(wanted.portions)}
              onWrite={(text) => {
                const portions = readPortions(text)
                if (portions === null || portions >= whole) return `Write a number below ${whole}.`
                setWanted({ ...wanted, portions })
                return null
              }}
            />{' '}
            of the {whole} get it without{' '}
            <WordText
              label="Without what"
              text={wanted.without}
              empty="something"
              onWrite={(text) => {
                setWanted({ ...wanted, without: cleanText(text.trim(), false).slice(0, 60) })
                return null
              }}
            />
            . It is made together up to{' '}
            <WordChoice
              label="The last step that they share"
              value={fork.id}
              options={steps
                .slice(0, -1)
                .map((step) => [step.id, `“${shorten(step.does || 'a step without words', 40)}”`] as const)}
              onChoose={setChosen}
            />{' '}
            and is called{' '}
            <WordText
              label="Name of the variant"
              text={name}
              onWrite={(text) => {
                setWanted({ ...wanted, name: cleanText(text.trim(), false).slice(0, 120) })
                return null
              }}
            />
            .
          </p>
          {tooLate.length > 0 ? (
            <p className={css.refused} role="status">
              {listText(tooLate.map((each) => shorten(each.food, 30)))} goes in before they part. Choose an earlier step to share,
              or say at the ingredient which later step it is for.
            </p>
          ) : null}
          <p className={css.hint}>
            The later steps and what goes in there are copied, to be changed as you like; what is named after “without” is left
            out of the copy. Read its labels again all the same.
          </p>
          <p>
            <Button tone="soft" onClick={make}>
              Make this variant
            </Button>
          </p>
          {wrong ? (
            <p className={css.refused} role="alert">
              {wrong}
            </p>
          ) : null}
        </>
      )}
    </Fold>
  )
}
