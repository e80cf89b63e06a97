'use client'

import { useParams } from 'next/navigation'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { sentence } from '#app/_words/clock.ts'
import { useText as wantText } from '#app/_words/kit.ts'
import { kitText } from '#app/_words/kit-piece.ts'
import { shorten } from '#app/_words/shorten.ts'
import { missingKit, type Want } from '#lib/domain/kit-wants.ts'
import type { Kitchen, Use } from '#lib/domain/kitchen.ts'
import { addKit } from '#lib/plan/commands/kitchen.ts'
import css from './kitchens.module.css'
import { kitFor } from './usual-kit.ts'

interface Group {
  readonly words: string
  readonly use: Use
  readonly wants: readonly Want[]
}

/** The wants of one kitchen, those for the same thing together. */
const wantGroups = (wants: readonly Want[]): readonly Group[] => {
  const groups = new Map<string, Want[]>()
  for (const want of wants) groups.set(wantText(want.use), [...(groups.get(wantText(want.use)) ?? []), want])
  return [...groups].flatMap(([words, of]) => (of[0] ? [{ words, use: of[0].use, wants: of }] : []))
}

/** What steps want of kit that the kitchen does not have: which, with the way to each, and one tap that adds it. */
export function WantsLeft({ kitchen }: { readonly kitchen: Kitchen }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const eveningId = String(useParams().id ?? evening.id)
  const groups = wantGroups(missingKit(evening).filter((want) => want.kitchen === kitchen.id))
  if (groups.length === 0) return null
  return (
    <ul className={css.wants} aria-label={`Wanted in ${kitchen.name}, and not there`}>
      {groups.map(({ words, use, wants }) => (
        <li key={words}>
          <b>Wanted and not here: {words}.</b>{' '}
          {wants.map((want, index) => (
            <span key={`${want.step?.id ?? want.dish?.id}`}>
              {index === 0 ? '' : '; '}
              <Link href={want.dish ? `/evenings/${eveningId}/menu/${want.dish.id}` : `/evenings/${eveningId}/chores`}>
                {want.step ? `“${shorten(want.step.does || 'a step without words', 40)}”` : `keeping ${want.dish?.name}`}
              </Link>
              {want.stuck ? '' : ' (has another way)'}
            </span>
          ))}
          .{' '}
          <Button
            tone="word"
            aria-label={`Add to ${kitchen.name}: ${kitText({ ...kitFor(use), id: 'new' })}`}
            onClick={() => tell((doc) => addKit(doc, kitchen.id, { ...kitFor(use), id: newId() }))}
          >
            {sentence(`add ${kitText({ ...kitFor(use), id: 'new' })}`)}
          </Button>
        </li>
      ))}
    </ul>
  )
}
