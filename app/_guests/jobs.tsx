'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { dishColour } from '#app/_ui/plate.tsx'
import { type PlateStanding, PlateState } from '#app/_ui/plate-state.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf, countText, sentence } from '#app/_words/clock.ts'
import { refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import { tableChangeText } from '#app/_words/verdict.ts'
import { labelsToCheck } from '#lib/table/labels-to-check.ts'
import type { TableChange } from '#lib/table/table-change.ts'
import type { TooFew } from '#lib/table/too-few.ts'
import type { TableGuest } from '#server/guests/table.ts'
import css from './jobs.module.css'
import { proposalWords } from './proposal-words.ts'
import { type Proposal, takeProposal, waysOf } from './proposals.ts'

interface Props {
  readonly eveningId: string
  readonly guests: readonly TableGuest[]
  readonly changes: readonly TableChange[]
  readonly few: readonly TooFew[]
  /** Makes a link for a guest; one that they have opens nothing then. */
  readonly onAsk: (guest: string) => void
}

/** The fewest things that give everybody something in every course: what the plan can do in one tap, and what only people can settle. */
export function Jobs({ eveningId, guests, changes, few, onAsk }: Props) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const names = namesOf(evening)
  const needs = guests.flatMap((guest) => (guest.reply === 'no' ? [] : (guest.needs ?? [])))
  const labels = labelsToCheck(evening, needs)
  if (changes.length + few.length + labels.length === 0)
    return <p className={css.quiet}>Everybody has something in every course, as far as is known.</p>
  return (
    <>
      <ul className={css.jobs}>
        {few.map((each) => (
          <li key={each.dish}>
            <PlateState standing="with-change" colour={1} size={40} />
            <div>
              <p>
                {names.dishName(each.dish)} is made for {countText(each.portions)}, and {countText(each.wanted)} cannot have
                another dish of its course.
              </p>
              <Button tone="word" onClick={() => tell((doc) => takeProposal(doc, { kind: 'portions', ...each }, newId))}>
                {proposalWords({ kind: 'portions', ...each }, names).todo}
              </Button>
            </div>
          </li>
        ))}
        {changes.map((change) => (
          <Job
            key={keyOf(change)}
            change={change}
            ways={waysOf(evening, changes, change)}
            guests={guests}
            eveningId={eveningId}
            onAsk={onAsk}
          />
        ))}
      </ul>
      {labels.length > 0 ? (
        <Fold title={`${sentence(countOf(labels.length, 'label'))} still to read in all`}>
          <ul className={css.labels}>
            {labels.map((label) => (
              <li key={label.ingredient}>
                <Link href={`/evenings/${eveningId}/menu/${label.dish}`}>{label.food}</Link>{' '}
                <small>{names.dishName(label.dish)}</small>
              </li>
            ))}
          </ul>
        </Fold>
      ) : null}
    </>
  )
}

const keyOf = (change: TableChange): string =>
  [
    change.kind,
    'dish' in change ? change.dish : '',
    'ingredient' in change ? change.ingredient : '',
    'course' in change ? change.course : '',
    'guest' in change ? change.guest : '',
    'need' in change ? change.need : '',
    'trait' in change ? change.trait : '',
  ].join(' ')

const STANDING: Readonly<Record<TableChange['kind'], PlateStanding>> = {
  swap: 'with-change',
  'leave-out': 'with-change',
  'cook-through': 'with-change',
  guard: 'with-change',
  check: 'not-confirmed',
  'ask-maker': 'not-confirmed',
  'ask-guest': 'not-confirmed',
  'ask-needs': 'not-confirmed',
  'ask-cook': 'not-confirmed',
  'write-ingredients': 'not-confirmed',
  'add-dish': 'does-not',
}

interface JobProps {
  readonly change: TableChange
  readonly ways: readonly Proposal[]
  readonly guests: readonly TableGuest[]
  readonly eveningId: string
  readonly onAsk: (guest: string) => void
}

function Job({ change, ways, guests, eveningId, onAsk }: JobProps) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const names = namesOf(evening)
  const course = 'course' in change ? change.course : 'dish' in change ? (names.dish(change.dish)?.course ?? '') : ''
  return (
    <li>
      <PlateState
        standing={STANDING[change.kind]}
        colour={dishColour(evening.courses.findIndex(({ id }) => id === course))}
        size={40}
      />
      <div>
        <p>{tableChangeText(change, evening, guests).says}</p>
        {ways.map((way) =>
          way.kind === 'guard' ? (
            <GuardWay key="guard" way={way} />
          ) : (
            <Button key={way.kind} tone="word" onClick={() => tell((doc) => takeProposal(doc, way, newId))}>
              {proposalWords(way, names).todo}
            </Button>
          ),
        )}
        {change.kind === 'ask-needs' ? (
          <Button tone="word" onClick={() => onAsk(change.guest)}>
            {guests.find(({ id }) => id === change.guest)?.invitation ? 'Make a new link' : 'Make a link'}
          </Button>
        ) : change.kind === 'add-dish' ? (
          <Link href={`/evenings/${eveningId}/menu`}>Add a dish on the menu</Link>
        ) : ways.length === 0 && 'dish' in change ? (
          <Link href={`/evenings/${eveningId}/menu/${change.dish}`}>{`Look at ${names.dishName(change.dish)}`}</Link>
        ) : null}
      </div>
    </li>
  )
}

/** A severe allergy's guards, and the cook who carries the plate: a claim, which the server decides. */
function GuardWay({ way }: { readonly way: Extract<Proposal, { kind: 'guard' }> }) {
  const { evening, send, edit } = usePlan()
  const names = namesOf(evening)
  const [cook, setCook] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const carrier = cook ?? evening.cooks.find(({ host }) => host)?.id ?? evening.cooks[0]?.id ?? ''
  const take = async () => {
    const taken = edit((doc) => takeProposal(doc, way, newId))
    if (!taken.ok || taken.value === null) return setWrong('That could not be put into the plan. Look at the dish.')
    if (carrier === '') return
    const outcome = await send({ kind: 'claim', target: taken.value, cook: carrier })
    setWrong(outcome.kind === 'refused' ? refusalText(outcome.why, names) : null)
  }
  return (
    <p className={css.guard}>
      {evening.cooks.length > 0 ? (
        <>
          <WordChoice
            label={`Who carries ${names.dishName(way.dish)}`}
            value={carrier}
            options={evening.cooks.map(({ id, name }) => [id, name] as const)}
            onChoose={setCook}
          />{' '}
          carries it.{' '}
        </>
      ) : null}
      <Button tone="word" onClick={take}>
        {proposalWords(way, names).todo}
      </Button>
      {wrong ? (
        <span className={css.refused} role="alert">
          {wrong}
        </span>
      ) : null}
    </p>
  )
}
