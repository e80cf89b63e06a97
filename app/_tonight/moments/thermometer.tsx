'use client'

import { useState } from 'react'
import { Doneness } from '#app/_safety/doneness.tsx'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordText } from '#app/_ui/word.tsx'
import { clockText } from '#app/_words/clock.ts'
import { estimatedText, reachedText, readCelsius, readingsText } from '#app/_words/thermometer.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { coreOfStep } from '#lib/night/core-estimate.ts'
import css from './moments.module.css'
import { longerFor, probedSteps } from './probed.ts'

/** Everything that cooks to a temperature inside and is under way: what the thermometer said, and when it will be there. */
export function Thermometers() {
  const { evening, order } = useNight()
  const steps = probedSteps(evening)
  if (order === null || steps.length === 0) return null
  return (
    <>
      {steps.map((step) => (
        <Thermometer key={step} step={step} />
      ))}
    </>
  )
}

/** Two readings make an estimate with its range, and that offers the minutes that it needs longer. The thermometer decides, never the estimate. */
function Thermometer({ step: id }: { readonly step: string }) {
  const { evening, order, names, nowMs, tell, cook } = useNight()
  const [isOpen, setOpen] = useState(false)
  const step = evening.steps.find((each) => each.id === id)
  const coreC = step?.until?.coreC
  const cue = order?.cues.find((each) => each.step === id)
  if (!step || coreC === undefined || !order || !cue) return null
  const fact = evening.night.find((each) => 'step' in each && each.step === id)
  const readings = fact && 'step' in fact ? (fact.readings ?? []) : []
  const estimate = coreOfStep(evening, order, id)
  const longer = estimate?.kind !== 'when' ? null : longerFor(estimate, msOfInstant(cue.end), nowMs)
  return (
    <section className={css.probe} aria-label={`Thermometer: ${names.stepName(id)}`}>
      <button type="button" className={css.line} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        Thermometer: {names.stepName(id)}
      </button>
      <p>{readingsText(readings, coreC, evening.zone)}</p>
      {estimate?.kind === 'reached' ? (
        <p>{reachedText(coreC)}</p>
      ) : estimate ? (
        <p>
          {estimatedText(estimate, coreC, evening.zone)}{' '}
          {longer === null ? null : (
            <button
              type="button"
              className={css.big}
              onClick={() => tell({ kind: 'longer', step: id, minutes: longer }, cook ?? undefined)}
            >
              Needs {longer} min longer, until {clockText(msOfInstant(cue.end) + longer * 60_000, evening.zone)}
            </button>
          )}
        </p>
      ) : null}
      {isOpen ? (
        <>
          <p className={css.sentence}>
            It says{' '}
            <WordText
              label={`What the thermometer says inside “${names.stepName(id)}”, in °C`}
              field={`thermometer.${id}`}
              text=""
              empty="58"
              onWrite={(text) => {
                const celsius = readCelsius(text)
                if (celsius === null) return 'Write the degrees, from -20 to 150: 58 or 58.5.'
                tell({ kind: 'reading', step: id, coreC: celsius }, cook ?? undefined)
                return null
              }}
            />
            ° in the middle, where it is thickest.
          </p>
          <Doneness step={id} />
        </>
      ) : null}
    </section>
  )
}
