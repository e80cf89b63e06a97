'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { batchText } from '#app/_words/batch.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import css from './quantities.module.css'

/** Beside a step's batch: how many times it is done for those who eat, and how long that is. */
export function BatchNote({ step, way }: { readonly step: Step; readonly way: Way }) {
  const { evening } = usePlan()
  if (!step.batch) return null
  const dish = evening.dishes.find((candidate) => candidate.id === step.dish)
  return <p className={css.note}>{batchText(dish?.portions ?? evening.covers, step.batch, way.takes)}</p>
}
