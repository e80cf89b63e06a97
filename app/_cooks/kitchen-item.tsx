'use client'

import { useParams } from 'next/navigation'
import type { ReactNode } from 'react'
import { Foldable } from '#app/_frame/foldable.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { kitchenText } from '#app/_words/kit-piece.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import { setHostKitchen } from '#lib/plan/commands/kitchen.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { KitList } from './kit-list.tsx'
import css from './kitchens.module.css'
import { TemplatePicker } from './template-picker.tsx'
import { WantsLeft } from './wants-left.tsx'

interface Props {
  readonly kitchen: Kitchen
  readonly isOpen: boolean
  readonly isFresh: boolean
  readonly onToggle: () => void
  readonly moves: ReactNode
}

/** One kitchen: what it has in a sentence, and, opened, every word of it to change. */
export function KitchenItem({ kitchen, isOpen, isFresh, onToggle, moves }: Props) {
  const { evening, me } = usePlan()
  const { change, tell } = useEdit()
  const isHosts = kitchen.id === evening.host
  const name = kitchen.name || 'A kitchen without a name'
  return (
    <Foldable
      id={kitchen.id}
      name={name}
      isOpen={isOpen}
      onToggle={onToggle}
      moves={moves}
      about={isHosts ? 'beside the table' : wayText(kitchen)}
    >
      {isOpen ? (
        <>
          <p className={css.words}>
            It is called{' '}
            <WordText
              field="name"
              label={`Name of the kitchen ${name}`}
              text={kitchen.name}
              autoFocus={isFresh}
              onWrite={(text) => {
                const written = cleanText(text.trim(), false).slice(0, 80)
                return written
                  ? change((doc) => setFields(doc, 'kitchens', kitchen.id, { name: written }))
                  : 'A kitchen needs a name.'
              }}
            />
            {isHosts ? (
              ' and stands beside the table. '
            ) : (
              <>
                . From there to the table one carries{' '}
                <WordText
                  field="way"
                  label={`${name}: the way to the table`}
                  text={durationText(kitchen.toTable)}
                  onWrite={(text) => {
                    const toTable = readDuration(text)
                    return toTable === null || secondsOf(toTable) === 0
                      ? 'Write how long the way is, such as 10 min.'
                      : change((doc) => setFields(doc, 'kitchens', kitchen.id, { toTable, ...mostFor(kitchen, toTable) }))
                  }}
                />
                , at worst{' '}
                <WordText
                  field="way at worst"
                  label={`${name}: the way to the table at worst`}
                  text={kitchen.toTableMost === undefined ? '' : durationText(kitchen.toTableMost)}
                  empty="no longer"
                  onWrite={(text) => {
                    if (text.trim() === '')
                      return change((doc) => setFields(doc, 'kitchens', kitchen.id, { toTableMost: undefined }))
                    const most = readDuration(text)
                    return most === null || secondsOf(most) < secondsOf(kitchen.toTable)
                      ? `Write how long the way is at worst, no less than ${durationText(kitchen.toTable)}, or nothing.`
                      : change((doc) => setFields(doc, 'kitchens', kitchen.id, { toTableMost: most }))
                  }}
                />
                .{' '}
                {me?.role === 'host' ? (
                  <Button
                    tone="word"
                    aria-label={`${name} is the one beside the table`}
                    onClick={() => tell((doc) => setHostKitchen(doc, kitchen.id))}
                  >
                    This is the one beside the table
                  </Button>
                ) : null}
              </>
            )}
          </p>
          <KitList kitchen={kitchen} />
          <TemplatePicker kitchen={kitchen} />
        </>
      ) : (
        <p className={css.summary}>{kitchenText(kitchen.kit)}</p>
      )}
      <WantsLeft kitchen={kitchen} />
      {isHosts ? null : <MadeHere kitchen={kitchen} />}
    </Foldable>
  )
}

/** A way that usually takes longer than it was said to take at worst has no worst any more. */
const mostFor = ({ toTableMost }: Kitchen, likely: string): { readonly toTableMost?: undefined } =>
  toTableMost !== undefined && secondsOf(toTableMost) < secondsOf(likely) ? { toTableMost: undefined } : {}

const wayText = (kitchen: Kitchen): string => `${durationText(kitchen.toTable)} from the table`

/** The dishes that are brought from a kitchen, each the way to its method. */
function MadeHere({ kitchen }: { readonly kitchen: Kitchen }) {
  const { evening } = usePlan()
  const eveningId = String(useParams().id ?? evening.id)
  const dishes = evening.dishes.filter((dish) => dish.kitchen === kitchen.id && dish.state !== 'dropped')
  if (dishes.length === 0) return <p className={css.summary}>No dish is made there yet.</p>
  return (
    <p className={css.summary}>
      Made there:{' '}
      {dishes.map((dish, index) => (
        <span key={dish.id}>
          {index === 0 ? '' : ', '}
          <Link href={`/evenings/${eveningId}/menu/${dish.id}`}>{dish.name}</Link>
        </span>
      ))}
      .
    </p>
  )
}
