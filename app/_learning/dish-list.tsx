'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { countOf, mediumDate, sentence } from '#app/_words/clock.ts'
import { leftWords, nextText, toldText, verdictWords } from '#app/_words/learning.ts'
import { type Left, portionsNext } from '#lib/learning/eaten.ts'
import type { Library, OwnDish, Target, Time, Verdict } from '#server/learning/library.ts'
import { putDishAction, sayOfDishAction } from './actions.ts'
import css from './learning.module.css'

const NOT_REACHED = 'The server cannot be reached, so nothing was changed. Try again.'
const UNSAID = ''

/** One's own dishes of past evenings: how each went, and into which evening it goes next. */
export function DishList({ library: { dishes, targets } }: { readonly library: Library }) {
  return dishes.map((dish) => <OneDish key={dish.name} dish={dish} targets={targets} />)
}

function OneDish({ dish, targets }: { readonly dish: OwnDish; readonly targets: readonly Target[] }) {
  const [times, setTimes] = useState(dish.times)
  const [latest, ...before] = times
  const nights = times.flatMap(({ made, covers, left }) => (left === null ? [] : [{ made, covers, left }]))
  const change = (time: Time, fields: Partial<Time>) =>
    setTimes((before) =>
      before.map((each) => (each.eveningId === time.eveningId && each.dish === time.dish ? { ...each, ...fields } : each)),
    )
  const listed = (those: readonly Time[]) => (
    <ul>
      {those.map((time) => (
        <OneTime
          key={`${time.eveningId} ${time.dish}`}
          name={dish.name}
          time={time}
          onChange={(fields) => change(time, fields)}
        />
      ))}
    </ul>
  )
  return (
    <section className={css.part} aria-label={dish.name}>
      <h2>{dish.name}</h2>
      {latest ? listed([latest]) : null}
      {before.length > 0 ? <Fold title={`${sentence(countOf(before.length, 'evening'))} before`}>{listed(before)}</Fold> : null}
      {latest && nights.length > 0 ? <p>{nextText(latest.covers, portionsNext(latest.covers, nights))}</p> : null}
      {latest && targets.length > 0 ? <PutIn name={dish.name} from={latest} targets={targets} /> : null}
    </section>
  )
}

interface TimeProps {
  readonly name: string
  readonly time: Time
  readonly onChange: (fields: Partial<Time>) => void
}

function OneTime({ name, time, onChange }: TimeProps) {
  const [wrong, setWrong] = useState<string | null>(null)
  const { eveningId, dish } = time
  const where = `${name} at ${time.evening}`
  const say = async (fields: Partial<Pick<Time, 'verdict' | 'left' | 'note'>>) => {
    const before = { verdict: time.verdict, left: time.left, note: time.note }
    onChange(fields)
    try {
      const problem = await sayOfDishAction({ eveningId, dish, ...fields })
      setWrong(problem)
      if (problem !== null) onChange(before)
    } catch {
      setWrong(NOT_REACHED)
      onChange(before)
    }
  }
  return (
    <li>
      <p>
        <b>{time.evening}</b>, {mediumDate(time.date)}, for {time.covers}: {toldText(time)}.
      </p>
      <fieldset className={css.verdicts}>
        <legend className={css.hidden}>Would you make it again? {where}</legend>
        {(Object.entries(verdictWords) as [Verdict, string][]).map(([verdict, words]) => (
          <label key={verdict}>
            <input
              type="radio"
              name={`${eveningId} ${dish}`}
              checked={time.verdict === verdict}
              onChange={() => void say({ verdict })}
            />
            {words}
          </label>
        ))}
      </fieldset>
      <p>
        When all had eaten,{' '}
        <WordChoice
          label={`What was left: ${where}`}
          value={time.left ?? UNSAID}
          options={[[UNSAID, 'nobody said what was left'], ...(Object.entries(leftWords) as [Left, string][])]}
          onChoose={(left) => void say({ left: left === UNSAID ? null : left })}
        />
        . To remember:{' '}
        <WordText
          label={`A note: ${where}`}
          field={`${eveningId} ${dish} note`}
          text={time.note}
          empty="a note for yourself"
          onWrite={(note) => {
            if (note.length > 400) return 'Write at most 400 letters.'
            void say({ note })
            return null
          }}
        />
      </p>
      {wrong ? (
        <p className={css.wrong} role="alert">
          {wrong}
        </p>
      ) : null}
    </li>
  )
}

interface PutProps {
  readonly name: string
  readonly from: Time
  readonly targets: readonly Target[]
}

/** The course that is called as the one in which it was, else the first. */
const placesOf = (targets: readonly Target[], course: string) =>
  targets.flatMap((target) =>
    target.courses
      .toSorted((a, b) => Number(b.name === course) - Number(a.name === course))
      .map((each) => ({
        eveningId: target.id,
        course: each.id,
        words: `${each.name}, ${target.name}, ${mediumDate(target.date)}`,
      })),
  )

function PutIn({ name, from, targets }: PutProps) {
  const places = placesOf(targets, from.course)
  const [chosen, setChosen] = useState(0)
  const [busy, setBusy] = useState(false)
  const [put, setPut] = useState<{ readonly says: string; readonly to: string | null } | null>(null)
  const place = places[chosen]
  if (!place) return null
  const go = async () => {
    setBusy(true)
    try {
      setPut(await putDishAction({ eveningId: from.eveningId, dish: from.dish }, place))
    } catch {
      setPut({ says: NOT_REACHED, to: null })
    }
    setBusy(false)
  }
  return (
    <>
      <p>
        <Button tone="soft" onClick={go} disabled={busy} aria-label={`Put ${name} into the evening`}>
          Put it
        </Button>{' '}
        with its method into{' '}
        <WordChoice
          label={`Where ${name} goes`}
          value={String(chosen)}
          options={places.map(({ words }, at) => [String(at), words] as const)}
          onChoose={(at) => setChosen(Number(at))}
        />
        .
      </p>
      <p role="status">
        {put?.says} {put?.to ? <a href={put.to}>See it there</a> : null}
      </p>
    </>
  )
}
