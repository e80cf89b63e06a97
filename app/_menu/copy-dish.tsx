'use client'

import { useEffect, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { mediumDate } from '#app/_words/clock.ts'
import { copiedText } from '#app/_words/copied.ts'
import type { Course } from '#lib/domain/menu.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { copiedDish } from '#lib/plan/copy-dish.ts'
import { settledDish } from '#lib/plan/settle-dish.ts'
import { dishesToCopyAction, dishToCopyAction, type EveningChoice, eveningsToCopyAction } from './actions.ts'
import css from './menu.module.css'

const HERE = 'here'
const NOT_REACHED = 'The server could not be reached. Try again when you are connected.'

interface Dishes {
  readonly of: string
  readonly lines: readonly { readonly id: string; readonly name: string; readonly course: string }[]
}

/** Takes a dish of this or another evening of one's own into a course, with its method and ingredients: one update, one undo. */
export function CopyDish({ course, onDone }: { readonly course: Course; readonly onDone: (dish: string | null) => void }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const show = useStrip()
  const [evenings, setEvenings] = useState<readonly EveningChoice[]>([])
  const [from, setFrom] = useState(HERE)
  const [elsewhere, setElsewhere] = useState<Dishes | null>(null)
  const [chosen, setChosen] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)

  useEffect(() => {
    let gone = false
    eveningsToCopyAction().then(
      (found) => gone || setEvenings(found.filter(({ id }) => id !== evening.id)),
      () => gone || setWrong(NOT_REACHED),
    )
    return () => {
      gone = true
    }
  }, [evening.id])

  const lines: Dishes['lines'] | null =
    from === HERE
      ? evening.dishes.map(({ id, name, course: of }) => ({
          id,
          name,
          course: evening.courses.find((each) => each.id === of)?.name ?? '',
        }))
      : elsewhere?.of === from
        ? elsewhere.lines
        : null
  const dish = lines?.find(({ id }) => id === chosen) ?? lines?.[0]

  const choose = async (id: string) => {
    setFrom(id)
    setChosen('')
    setWrong(null)
    if (id === HERE || elsewhere?.of === id) return
    try {
      const { found, message } = await dishesToCopyAction(id)
      setWrong(message)
      if (found) setElsewhere({ of: id, lines: found })
    } catch {
      setWrong(NOT_REACHED)
    }
  }

  const copyHere = (id: string): string | null => {
    const copied = copiedDish(evening, id, newId, (step) => evening.steps.some((each) => each.id === step))
    if (!copied) return 'This was removed meanwhile.'
    const problem = change((doc) => bringDish(doc, { ...copied, dish: { ...copied.dish, course: course.id } }))
    if (problem === null) finish(copied.dish.id, copiedText(copied.dish.name, []))
    return problem
  }
  const copyFrom = async (of: string, id: string): Promise<string | null> => {
    const { found, message } = await dishToCopyAction(of, id)
    if (!found) return message
    const settled = settledDish(found, { course: course.id, host: evening.host }, newId)
    if (!settled) return 'This was removed meanwhile.'
    const problem = change((doc) => bringDish(doc, settled.brought))
    if (problem === null) finish(settled.brought.dish.id, copiedText(settled.brought.dish.name, settled.cuts))
    return problem
  }
  const finish = (id: string, words: string) => {
    show(words, null)
    onDone(id)
  }
  const copy = async () => {
    if (!dish || busy) return
    setBusy(true)
    try {
      setWrong(from === HERE ? copyHere(dish.id) : await copyFrom(from, dish.id))
    } catch {
      setWrong(NOT_REACHED)
    }
    setBusy(false)
  }

  return (
    <div className={css.copy}>
      <p className={css.sentence}>
        From{' '}
        <WordChoice
          label="Evening to copy from"
          value={from}
          options={[
            [HERE, 'this evening'],
            ...evenings.map((each) => [each.id, `${each.name}, ${mediumDate(each.date)}`] as const),
          ]}
          onChoose={choose}
        />
        , copy{' '}
        {lines === null ? (
          'its dishes are being looked up'
        ) : dish ? (
          <WordChoice
            label="Dish to copy"
            value={dish.id}
            options={lines.map((line) => [line.id, `${line.name} (${line.course})`] as const)}
            onChoose={setChosen}
          />
        ) : (
          'nothing: it has no dish'
        )}{' '}
        to {course.name}.
      </p>
      {wrong ? (
        <p className={css.wrong} role="alert">
          {wrong}
        </p>
      ) : null}
      <p className={css.row}>
        <Button onClick={copy} disabled={busy || !dish}>
          Copy it
        </Button>
        <Button tone="word" onClick={() => onDone(null)}>
          Leave it
        </Button>
      </p>
    </div>
  )
}
