'use client'

import type { ReactNode } from 'react'
import { Foldable } from '#app/_frame/foldable.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { claimedText } from '#app/_words/claimed.ts'
import { paceWords } from '#app/_words/pace.ts'
import { busyText, hoursText } from '#app/_words/presence.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { BusyList } from './busy-words.tsx'
import { CookWords } from './cook-words.tsx'
import css from './cooks.module.css'
import { HoursList } from './hours-words.tsx'
import type { Member } from './member.ts'

interface Props {
  readonly cook: Cook
  readonly member: Member | undefined
  readonly isOpen: boolean
  readonly isFresh: boolean
  readonly onToggle: () => void
  readonly moves: ReactNode
}

/** One cook: what matters of them in two lines, and, opened, every word of it to change. */
export function CookItem({ cook, member, isOpen, isFresh, onToggle, moves }: Props) {
  const { evening } = usePlan()
  const theirs = claimedText(evening, cook.id)
  const about = [cook.host ? 'host' : 'helper', ...(member ? [member.you ? 'you' : `${member.name}’s account`] : [])].join(', ')
  return (
    <Foldable
      id={cook.id}
      name={cook.name || 'A cook without a name'}
      about={about}
      isOpen={isOpen}
      onToggle={onToggle}
      moves={moves}
    >
      {isOpen ? (
        <>
          <CookWords cook={cook} isFresh={isFresh} />
          <HoursList cook={cook} />
          <BusyList cook={cook} />
          {theirs ? <p className={css.quiet}>Has taken on {theirs}.</p> : null}
        </>
      ) : (
        <>
          <p className={css.summary}>
            {cook.presence.length === 0
              ? 'Is there at no time yet, and is given no work.'
              : `${[
                  ...cook.presence.map((hours) => hoursText(evening.date, hours)),
                  ...(cook.busy ?? []).map((busy) => busyText(evening.date, busy)),
                ].join('; ')}.`}
          </p>
          <p className={css.summary}>
            {[
              cook.eats ? 'Eats with the guests' : 'Does not sit down',
              ...(cook.drinks ? ['has a glass'] : []),
              ...(cook.pace === 1 ? [] : [`works ${paceWords(cook.pace)}`]),
              ...(theirs ? [`has ${theirs}`] : []),
            ].join(', ')}
            .
          </p>
        </>
      )}
    </Foldable>
  )
}
