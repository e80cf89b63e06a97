'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { keepWords, stateWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './dish.module.css'

const WRONG = 'Write a time, such as 10 min or 2 h.'
const KEEPS = Object.entries(keepWords).map(([how, words]) => [how as Dish['keeps']['how'], words] as const)
const STATES = Object.entries(stateWords).map(([state, words]) => [state as Dish['state'], words] as const)

/** What happens to the finished dish, and where it is made. */
export function DishWords({ dish }: { readonly dish: Dish }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const set = (patch: Partial<Omit<Dish, 'id' | 'order' | 'course'>>) => change((doc) => setFields(doc, 'dishes', dish.id, patch))
  return (
    <section className={css.finished} aria-labelledby="finished">
      <h2 id="finished">When it is done</h2>
      <p className={css.words}>
        It keeps{' '}
        <WordChoice
          label="How it keeps"
          value={dish.keeps.how}
          options={KEEPS}
          onChoose={(how) => set({ keeps: { ...dish.keeps, how } })}
        />{' '}
        for{' '}
        <WordText
          label="How long it keeps"
          text={durationText(dish.keeps.most)}
          onWrite={(text) => {
            const most = readDuration(text)
            return most === null ? WRONG : set({ keeps: { ...dish.keeps, most } })
          }}
        />
        . It may be on the table{' '}
        <WordText
          label="How early it may be on the table"
          text={secondsOf(dish.toTable.early) === 0 ? '' : durationText(dish.toTable.early)}
          empty="no time"
          onWrite={(text) => {
            const early = text.trim() === '' ? 'PT0S' : readDuration(text)
            return early === null ? WRONG : set({ toTable: { ...dish.toTable, early } })
          }}
        />{' '}
        before the rest of its course, and come{' '}
        <WordText
          label="How late it may come"
          text={secondsOf(dish.toTable.late) === 0 ? '' : durationText(dish.toTable.late)}
          empty="no time"
          onWrite={(text) => {
            const late = text.trim() === '' ? 'PT0S' : readDuration(text)
            return late === null ? WRONG : set({ toTable: { ...dish.toTable, late } })
          }}
        />{' '}
        after it. It is{' '}
        <WordChoice label="On the menu or not" value={dish.state} options={STATES} onChoose={(state) => set({ state })} />
        {evening.kitchens.length > 1 ? (
          <>
            , and made in{' '}
            <WordChoice
              label="In which kitchen"
              value={dish.kitchen}
              options={evening.kitchens.map((kitchen) => [kitchen.id, kitchen.name] as const)}
              onChoose={(kitchen) => set({ kitchen })}
            />
          </>
        ) : null}
        .
      </p>
    </section>
  )
}
