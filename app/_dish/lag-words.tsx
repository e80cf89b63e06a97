'use client'

import { useMemo } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { namesOf } from '#app/_words/names.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { After, Step } from '#lib/domain/menu.ts'
import { removeLag, setLag } from '#lib/plan/commands/method.ts'
import css from './step.module.css'

const NONE = ''
const WRONG = 'Write a time, such as 10 min, 2 h or 2 days.'
const EDGES = [
  ['end', 'is over'],
  ['start', 'has begun'],
] as const
const KINDS = [
  ['quality', 'it is better so'],
  ['safety', 'it is only safe so'],
] as const

/** What a step waits for, and how long it may wait. */
export function LagWords({ step }: { readonly step: Step }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const names = useMemo(() => namesOf(evening), [evening])
  const name = step.does || 'This step'
  const waited = new Set(step.after.map((after) => after.step))
  const own = evening.steps.filter((other) => other.dish === step.dish)
  const others = [...own, ...evening.steps.filter((other) => other.dish !== step.dish)].filter(
    (other) => other.id !== step.id && !waited.has(other.id),
  )
  return (
    <>
      {step.after.map((after) => (
        <OneLag key={after.step} step={step} after={after} name={name} otherName={names.stepName(after.step)} />
      ))}
      {others.length > 0 ? (
        <p className={css.words}>
          {step.after.length === 0 ? 'It waits for ' : 'And it waits for '}
          <WordChoice
            label={`${name}: wait for another step`}
            value={NONE}
            options={[
              [NONE, step.after.length === 0 ? 'no other step' : 'nothing else'] as const,
              ...others.map((other) => [other.id, `“${names.stepName(other.id)}”`] as const),
            ]}
            onChoose={(other) =>
              other !== NONE && tell((doc) => setLag(doc, step.id, { step: other, from: 'end', least: 'PT0S', kind: 'quality' }))
            }
          />
          .
        </p>
      ) : null}
    </>
  )
}

function OneLag({ step, after, name, otherName }: { step: Step; after: After; name: string; otherName: string }) {
  const { change, tell } = useEdit()
  const set = (patch: Partial<After>) => change((doc) => setLag(doc, step.id, { ...after, ...patch }))
  const which = `${name}, after ${otherName}`
  return (
    <p className={css.words}>
      It starts when{' '}
      <WordChoice
        label={`${which}: other step`}
        value={after.step}
        options={[[after.step, `“${otherName}”`] as const, [NONE, 'nothing any more'] as const]}
        onChoose={(other) => other === NONE && tell((doc) => removeLag(doc, step.id, after.step))}
      />{' '}
      <WordChoice label={`${which}: end or start`} value={after.from} options={EDGES} onChoose={(from) => set({ from })} />
      {', after '}
      <WordText
        label={`${which}: at least`}
        text={secondsOf(after.least) === 0 ? '' : durationText(after.least)}
        empty="no pause"
        onWrite={(text) => {
          const least = text.trim() === '' ? 'PT0S' : readDuration(text)
          if (least === null) return WRONG
          return set({ least, ...(after.most !== undefined && secondsOf(after.most) < secondsOf(least) ? { most: least } : {}) })
        }}
      />
      {' and within '}
      <WordText
        label={`${which}: at most`}
        text={after.most === undefined ? '' : secondsOf(after.most) === 0 ? '0 min' : durationText(after.most)}
        empty="any time"
        onWrite={(text) => {
          if (text.trim() === '') return set({ most: undefined })
          const most = readDuration(text)
          if (most === null) return WRONG
          return secondsOf(most) < secondsOf(after.least) ? 'This must not be shorter than the pause before it.' : set({ most })
        }}
      />
      {after.most === undefined ? null : (
        <>
          {': '}
          <WordChoice label={`${which}: why`} value={after.kind} options={KINDS} onChoose={(kind) => set({ kind })} />
        </>
      )}
      .
    </p>
  )
}
