'use client'

import { useId } from 'react'
import { Here } from '#app/_frame/here.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useWhere } from '#app/_frame/where.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import { listText, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { dishesText, labelText, lineAmountText, toBuyText, wantedText, whenText, whoText } from '#app/_words/shopping.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Line } from '#lib/shopping/line.ts'
import { LabelRead } from './label-read.tsx'
import { amountParts, errandParts } from './line-sentences.ts'
import css from './shopping.module.css'
import { Thaw } from './thaw.tsx'
import { useLines } from './use-line.ts'

interface Props {
  readonly line: Line
  readonly names: Names
  readonly isOpen: boolean
  readonly onToggle: () => void
}

/** One thing to buy: a large row to tick with the thumb, and all that can be said of it behind one button. */
export function LineRow({ line, names, isOpen, onToggle }: Props) {
  const { evening } = usePlan()
  const { turn } = useLines()
  const id = useId()
  const { standing } = line
  const isGot = standing.kind === 'got'
  // What others are told to look at is an entry of the plan.
  const place = line.parts[0]?.ingredient ?? line.note
  useWhere(isOpen ? place : null)
  const about = [
    wantedText(line),
    line.when.kind === 'on' && !line.when.said ? '' : whenText(line.when, evening.date),
    whoText(line, names),
  ].filter(Boolean)
  return (
    <li className={isOpen ? css.opened : css.item} data-line={line.key}>
      <div className={css.row}>
        <label className={isGot ? css.got : css.tick}>
          <input type="checkbox" checked={isGot} onChange={() => turn(line)} aria-describedby={`${id}-about`} />
          <span className={css.food}>{line.food}</span>
          <b className={css.amount}>{toBuyText(line)}</b>
        </label>
        <button
          type="button"
          className={css.more}
          aria-expanded={isOpen}
          aria-label={`More about ${line.food}`}
          onClick={onToggle}
        >
          <span aria-hidden="true">{isOpen ? '–' : '+'}</span>
        </button>
      </div>
      <p className={css.about} id={`${id}-about`}>
        {standing.kind === 'more' && line.unit !== null ? (
          <span className={css.wants}>{lineAmountText(standing.n, line.unit)} more than was bought. </span>
        ) : null}
        {isGot && standing.by.length > 0
          ? `${listText(standing.by.map(names.cookName))} ${standing.by.length > 1 ? 'have' : 'has'} it.`
          : null}
        {isGot ? null : about.join('; ')}
        {line.labels.length > 0 ? <span className={css.wants}>{labelText(line)}</span> : null}
        {place === null ? null : <Here target={place} />}
      </p>
      {isOpen ? (
        <Entry id={line.key}>
          <LineOpen line={line} names={names} />
        </Entry>
      ) : null}
    </li>
  )
}

function LineOpen({ line, names }: { readonly line: Line; readonly names: Names }) {
  const { evening, me } = usePlan()
  const { removeWithStrip } = useEdit()
  const { say, tell } = useLines()
  const mine = me?.cook ?? null
  const dishes = dishesText(line, names)
  const weighed = line.parts.flatMap((part) => (part.weighed ? [part.weighed] : []))
  return (
    <div className={css.open}>
      <p className={css.taps}>
        {mine === null ? null : (
          <Button tone="soft" onClick={() => tell([line], { by: line.by === mine ? undefined : mine })}>
            {line.by === mine ? 'I leave it to others' : 'I’ll get it'}
          </Button>
        )}
        <Button tone="soft" onClick={() => tell([line], { have: line.have === 'all' ? undefined : 'all' })}>
          {line.have === 'all' ? 'We have none of it' : 'We have it'}
        </Button>
      </p>
      <Sentence parts={amountParts(line)} of={line.key} onEdit={(patch) => say([line], patch)} />
      <Sentence parts={errandParts(line, evening)} of={line.key} onEdit={(patch) => say([line], patch)} />
      {line.labels.length > 0 ? <LabelRead line={line} /> : null}
      {line.read && line.labels.length === 0 ? (
        <p className={css.note}>The label is read{line.read.by ? `, by ${names.cookName(line.read.by)}` : ''}.</p>
      ) : null}
      <Thaw line={line} />
      {dishes ? <p className={css.note}>For {dishes}.</p> : null}
      {line.parts.length > 1 && line.unit !== null ? (
        <ul className={css.parts}>
          {line.parts.map((part) => (
            <li key={part.ingredient}>
              {part.n === null ? 'some' : lineAmountText(part.n, line.unit ?? '')}: {part.food}, {names.dishName(part.dish)}
              {part.weighed ? ` (${lineAmountText(part.weighed.ml, 'ml')} weighed)` : ''}
            </li>
          ))}
        </ul>
      ) : null}
      {weighed[0] ? <p className={css.source}>Weighed by {sourceText(weighed[0].source)}.</p> : null}
      {line.refuse && line.ready ? (
        <p className={css.source}>
          {sentence(`${line.refuse.percent} % is ${line.refuse.what}`)}: {sourceText(line.refuse.source)}.
        </p>
      ) : null}
      {line.pack && !line.pack.said ? <p className={css.source}>Size of the pack: common practice, no official source.</p> : null}
      {line.kind === 'own' && line.note !== null ? (
        <p>
          <Button tone="quiet" onClick={() => removeWithStrip('shopping', line.note ?? '', line.food)}>
            Take it off the list
          </Button>
        </p>
      ) : null}
    </div>
  )
}
