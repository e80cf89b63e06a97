'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { askedWords, assumesText, estimateText, hobWords, noEstimateText, ovenWords, shapeWords } from '#app/_words/estimate.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Span } from '#lib/domain/atoms.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import { estimateSpan } from '#lib/quantities/estimate.ts'
import { type Asked, answerTo, HOB_KW, questionsFor, ROASTED } from './estimate.ts'
import css from './quantities.module.css'

interface Props {
  readonly step: Step
  readonly way: Way
  /** "Boil the water: minutes", for those who cannot see the sentence. */
  readonly named: (what: string) => string
  /** Takes the minutes over; returns what is wrong with them, or null. */
  readonly onTake: (takes: Span) => string | null
}

/** Minutes offered where a cook does not know them: a folded question, its answer an estimate with spread and source. */
export function EstimateMinutes({ step, way, named, onTake }: Props) {
  const { evening } = usePlan()
  const dish = evening.dishes.find((candidate) => candidate.id === step.dish)
  const home = step.role === 'make' ? (dish?.kitchen ?? evening.host) : evening.host
  const kit = evening.kitchens.find((kitchen) => kitchen.id === home)?.kit ?? []
  const questions = questionsFor(step, way, kit)
  const [asked, setAsked] = useState<Asked | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const now = asked ?? questions[0]
  if (!now) return null
  const ask = (next: Asked) => {
    setAsked(next)
    setSaid(null)
  }
  const answer = answerTo(now)
  return (
    <div className={css.estimate}>
      <Fold title="Estimate these minutes">
        <p className={css.words}>
          It is{' '}
          <WordChoice
            label={named('what is estimated')}
            value={now.kind}
            options={questions.map((each) => [each.kind, askedWords[each.kind]] as const)}
            onChoose={(kind) => {
              const other = questions.find((each) => each.kind === kind)
              if (other) ask(other)
            }}
          />
          : <Question asked={now} named={named} onAsk={ask} />
        </p>
        {answer.ok ? (
          <>
            <p className={css.answer}>
              <b>Estimate:</b> {estimateText(answer.value)}.
            </p>
            {answer.value.roast ? (
              <p className={css.note}>
                In an oven of {Math.round(answer.value.roast.ovenC)}°. Done when a thermometer says{' '}
                {Math.ceil(answer.value.roast.coreC)}° inside
                {answer.value.roast.restMinutes > 0 ? `, and then ${answer.value.roast.restMinutes} min of rest` : ''}: that
                decides, not the clock.
              </p>
            ) : null}
            {now.kind === 'chill' ? (
              <p className={css.note}>This says nothing about safety: how fast food must be cold is what your local rules say.</p>
            ) : null}
            <p className={css.note}>
              Assumed: {assumesText(answer.value).join('; ')}. From: {answer.value.sources.map(sourceText).join('; ')}.
            </p>
            <p>
              <Button
                tone="soft"
                aria-label={named('take these minutes')}
                onClick={() => setSaid(onTake(estimateSpan(answer.value)) ?? 'Taken. Change them above as you like.')}
              >
                Take these minutes
              </Button>
            </p>
            <p className={css.note} role="status">
              {said}
            </p>
          </>
        ) : (
          <p className={css.refused} role="status">
            {noEstimateText(answer.error)}
          </p>
        )}
      </Fold>
    </div>
  )
}

interface QuestionProps {
  readonly asked: Asked
  readonly named: (what: string) => string
  readonly onAsk: (asked: Asked) => void
}

const WRONG = 'Write a number, such as 4 or 1.5.'
const wordsOf = <T extends string>(table: Readonly<Record<T, string>>) =>
  Object.entries<string>(table).map(([value, words]) => [value as T, words] as const)

function Question({ asked, named, onAsk }: QuestionProps) {
  const number = (what: string, value: number, unit: string, put: (value: number) => Asked) => (
    <WordText
      label={named(what)}
      text={`${value}${unit}`}
      onWrite={(text) => {
        const found = /^\s*(-?\d+(?:[.,]\d+)?)/.exec(text)
        if (!found) return WRONG
        onAsk(put(Number((found[1] ?? '').replace(',', '.'))))
        return null
      }}
    />
  )
  switch (asked.kind) {
    case 'boil':
      return (
        <>
          {number('litres of water', asked.litres, ' l', (litres) => ({ ...asked, litres }))} from{' '}
          {number('how warm it is at first', asked.fromC, '°', (fromC) => ({ ...asked, fromC }))}, on{' '}
          <WordChoice
            label={named('kind of hob')}
            value={asked.hob}
            options={wordsOf(hobWords)}
            onChoose={(hob) => onAsk({ ...asked, hob, kW: HOB_KW[hob] })}
          />{' '}
          with a ring of {number('power of the ring', asked.kW, ' kW', (kW) => ({ ...asked, kW }))}.
        </>
      )
    case 'preheat':
      return (
        <>
          <WordChoice
            label={named('kind of oven')}
            value={asked.oven}
            options={[
              ...(asked.ownPerMin === null ? [] : [['own', `this oven, which heats ${asked.ownPerMin}° a minute`] as const]),
              ...wordsOf(ovenWords),
            ]}
            onChoose={(oven) => onAsk({ ...asked, oven })}
          />{' '}
          to {number('how hot', asked.toC, '°', (toC) => ({ ...asked, toC }))}.
        </>
      )
    case 'roast':
      return (
        <>
          <WordChoice
            label={named('which joint')}
            value={asked.joint}
            options={ROASTED.map((joint) => [joint, joint] as const)}
            onChoose={(joint) => onAsk({ ...asked, joint })}
          />
          , {number('its weight', asked.kg, ' kg', (kg) => ({ ...asked, kg }))}.
        </>
      )
    case 'chill':
      return (
        <>
          <WordChoice
            label={named('what it stands in')}
            value={asked.shape}
            options={wordsOf(shapeWords)}
            onChoose={(shape) => onAsk({ ...asked, shape })}
          />{' '}
          from {number('how warm it is at first', asked.fromC, '°', (fromC) => ({ ...asked, fromC }))} to{' '}
          {number('how cold it should be', asked.toC, '°', (toC) => ({ ...asked, toC }))} in a fridge of{' '}
          {number('how cold the fridge is', asked.fridgeC, '°', (fridgeC) => ({ ...asked, fridgeC }))}.
        </>
      )
  }
}
