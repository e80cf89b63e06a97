'use client'

import { type Ref, useMemo } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { dishColour } from '#app/_ui/plate.tsx'
import { PlateState } from '#app/_ui/plate-state.tsx'
import { listText, sentence } from '#app/_words/clock.ts'
import { comparedText } from '#app/_words/compare.ts'
import { guestName } from '#app/_words/guest.ts'
import { namesOf } from '#app/_words/names.ts'
import { standingWords, verdictShort } from '#app/_words/verdict.ts'
import type { Guest } from '#lib/domain/people.ts'
import { buyChanges } from './buy-changes.ts'
import { guestChanges, type PlateChange, type PlateFor, plateChanges } from './guest-changes.ts'
import css from './late.module.css'
import { proposalWords } from './proposal-words.ts'
import { type Proposal, takeAll } from './proposals.ts'
import type { Late } from './use-late.ts'

interface Props {
  readonly late: Late
  readonly guests: readonly Guest[]
  readonly before: readonly PlateFor[]
  readonly now: readonly PlateFor[]
  readonly proposals: readonly Proposal[]
  readonly headRef: Ref<HTMLHeadingElement>
}

const FEW = 8

/** What is new of the guests, and all that it changes: the menu, the running order and what is bought, side by side. */
export function LatePanel({ late, guests, before, now, proposals, headRef }: Props) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const names = namesOf(late.proposed)
  const said = guestChanges(late.stood.guests, guests)
  const plates = plateChanges(before, now)
  const bought = useMemo(() => buyChanges(late.stood.evening, late.proposed), [late.stood.evening, late.proposed])
  const compared = late.before && late.order ? comparedText(late.before, late.order, names) : null
  const wanted = proposals.map((proposal) => proposalWords(proposal, namesOf(evening)))
  return (
    <section className={css.late} aria-labelledby="late">
      <div className={css.head}>
        <h2 id="late" ref={headRef} tabIndex={-1}>
          What this changes
        </h2>
        <Button tone="soft" onClick={late.seen}>
          I have seen it
        </Button>
      </div>
      {proposals.length > 0 ? (
        <p className={css.with}>
          Reckoned with {listText(wanted.map(({ short }) => short))}.{' '}
          <Button onClick={() => tell((doc) => takeAll(doc, proposals, newId))}>
            {proposals.length === 1 ? 'Do that' : 'Do all of that'}
          </Button>
        </p>
      ) : null}
      <div className={css.columns}>
        <section aria-label="New of the guests">
          <h3>Guests</h3>
          <Lines lines={said} none="Nothing new." />
        </section>
        <section aria-label="What it changes in the menu">
          <h3>Menu</h3>
          {plates.length === 0 ? (
            <p className={css.none}>Every plate stands as before.</p>
          ) : (
            <ul>
              {plates.slice(0, FEW).map((change) => (
                <PlateLine key={`${change.course} ${change.guest}`} change={change} guests={guests} />
              ))}
              {plates.length > FEW ? <li>and {plates.length - FEW} more, as the table below shows</li> : null}
            </ul>
          )}
        </section>
        <section aria-label="What it changes in the running order">
          <h3>Running order</h3>
          {late.isPlanning ? (
            <p className={css.none} role="status">
              It is being worked out…
            </p>
          ) : compared === null ? (
            <p className={css.none}>It could not be worked out here.</p>
          ) : compared.same ? (
            <p className={css.none}>It stays as it is.</p>
          ) : (
            <ul>
              {compared.worse.map((words) => (
                <li key={words} className={css.worse}>
                  <span aria-hidden="true">− </span>
                  {sentence(words)}.
                </li>
              ))}
              {compared.better.map((words) => (
                <li key={words} className={css.better}>
                  <span aria-hidden="true">+ </span>
                  {sentence(words)}.
                </li>
              ))}
              {compared.moved ? <li>{compared.moved}</li> : null}
            </ul>
          )}
        </section>
        <section aria-label="What it changes in the shopping">
          <h3>Shopping</h3>
          {bought.length === 0 ? (
            <p className={css.none}>Nothing more and nothing less to buy.</p>
          ) : (
            <ul className={css.bought}>
              {bought.map(({ food, before: was, after }) => (
                <li key={food}>
                  {food}{' '}
                  <span>
                    {was === null ? (
                      <>new: {after}</>
                    ) : after === null ? (
                      <>no more ({was})</>
                    ) : (
                      <>
                        {was} <span aria-hidden="true">→</span>
                        <span className="vh">becomes</span> {after}
                      </>
                    )}
                  </span>
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
    </section>
  )
}

function Lines({ lines, none }: { readonly lines: readonly string[]; readonly none: string }) {
  if (lines.length === 0) return <p className={css.none}>{none}</p>
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  )
}

function PlateLine({ change, guests }: { readonly change: PlateChange; readonly guests: readonly Guest[] }) {
  const { evening } = usePlan()
  const names = namesOf(evening)
  const guest = guests.find(({ id }) => id === change.guest)
  const standing = change.now?.verdict.kind ?? 'does-not'
  const short = change.now ? verdictShort(change.now.verdict, evening) : ''
  return (
    <li className={css.plate}>
      <PlateState
        standing={standing}
        colour={dishColour(evening.courses.findIndex(({ id }) => id === change.course))}
        size={30}
      />
      <span>
        <b>{guest ? guestName(guest) : 'Somebody'}</b>, {names.courseName(change.course)}:{' '}
        {standing === 'does-not'
          ? 'nothing yet'
          : `${change.now ? names.dishName(change.now.dish) : ''} ${standingWords[standing]}`}
        {short && standing !== 'fits' ? ` (${short})` : ''}
      </span>
    </li>
  )
}
