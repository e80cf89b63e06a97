'use client'

import { minutesBefore } from '#app/_chores/usual-chores.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { atText, dayOf } from '#app/_words/clock.ts'
import { lineAmountText } from '#app/_words/shopping.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant, wallTimeOfMs } from '#lib/domain/time.ts'
import { addThaw } from '#lib/plan/commands/thaw.ts'
import type { Line, Part } from '#lib/shopping/line.ts'
import { isThawed, THAW, thawHours } from '#lib/shopping/thaw.ts'
import css from './shopping.module.css'

const LONGEST_ID = 40
/** One step for each frozen ingredient, whoever asks for it. */
const thawId = (ingredient: string): string => `thaw-${ingredient}`.slice(0, LONGEST_ID)
/** Somebody puts it in when it suits, on the day before it must be in. */
const SLACK_HOURS = 24

/** When a part is first wanted: with the first cue of its dish, else when one sits down. */
const usedAt = (evening: Evening, order: RunningOrder | null, part: Part) => {
  const step = evening.ingredients.find(({ id }) => id === part.ingredient)?.step
  const own = new Set(evening.steps.filter(({ id, dish }) => (step ? id === step : dish === part.dish)).map(({ id }) => id))
  const starts = (order?.cues ?? []).filter((cue) => own.has(cue.step)).map(({ start }) => msOfInstant(start))
  return starts.length > 0 ? wallTimeOfMs(evening, Math.min(...starts)) : evening.sitDown
}

/** Frozen food has to be moved to the fridge in time: a step of its dish, with a window that the running order keeps. */
export function Thaw({ line }: { readonly line: Line }) {
  const { evening, order, now } = usePlan()
  const { tell } = useEdit()
  const planned = order.kind === 'none' ? null : order.order
  const parts = line.unit === 'g' ? line.parts.filter(({ food, n }) => n !== null && isThawed(food)) : []
  return parts.map((part) => {
    const there = evening.steps.some(({ id }) => id === thawId(part.ingredient))
    const cue = planned?.cues.find(({ step }) => step === thawId(part.ingredient))
    if (there)
      return (
        <p key={part.ingredient} className={css.note}>
          It is thawed in the fridge{cue ? ` from ${atText(evening.date, wallTimeOfMs(evening, msOfInstant(cue.start)))}` : ''}: a
          step of its dish.
        </p>
      )
    const hours = thawHours(part.n?.valueOf() ?? 0)
    const used = usedAt(evening, planned, part)
    const latest = minutesBefore(used, hours.most * 60)
    const late = latest.day < dayOf(evening, now())
    return (
      <div key={part.ingredient} className={css.note}>
        <p>
          {part.n ? lineAmountText(part.n, 'g') : line.food} thaws in the fridge in{' '}
          {hours.least === hours.most ? hours.most : `${hours.least} to ${hours.most}`} hours: move it there by{' '}
          {atText(evening.date, latest)}. {late ? 'That is past: ask for some that is not frozen. ' : ''}
          <cite>{sourceText(THAW)}</cite>
        </p>
        <Button
          tone="word"
          onClick={() =>
            tell((doc) =>
              addThaw(doc, {
                id: thawId(part.ingredient),
                ingredient: part.ingredient,
                does: `Move the ${line.food} to the fridge to thaw`.slice(0, 400),
                hours,
                earliest: minutesBefore(used, (hours.most + SLACK_HOURS) * 60),
              }),
            )
          }
        >
          Put the thawing into the plan
        </Button>
      </div>
    )
  })
}
