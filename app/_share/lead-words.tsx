'use client'

import { useState } from 'react'
import { sameWish, useClaim } from '#app/_frame/use-claim.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { priceText } from '#app/_words/claimed.ts'
import { listText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import css from './share.module.css'

const NOBODY = ''

/** Who leads a course while the others sit: leading it means having all of it that nobody else has. */
export function LeadWords({ course, names }: { readonly course: string; readonly names: Names }) {
  const { evening, me } = usePlan()
  const { tell } = useEdit()
  const { phase, worse, dear, refused, ask } = useClaim(course)
  const [wanted, setWanted] = useState<string | null>(null)
  const name = names.courseName(course)
  const lead = evening.courses.find(({ id }) => id === course)?.lead ?? NOBODY
  const held = evening.claims.find(({ target }) => target === course)
  const speaksFor = (cook: string) => me?.role === 'host' || me?.cook === cook
  const choices = evening.cooks.filter(({ id }) => id === lead || speaksFor(id))
  const sitting = evening.cooks.filter(({ id, eats }) => eats && id !== lead)

  const sits = `${listText(sitting.map((cook) => cook.name))} ${sitting.length === 1 ? 'sits' : 'sit'}`
  const does = lead !== NOBODY && held?.cook === lead

  const wish = (cook: string): Wish =>
    held ? { kind: 'reassign', target: course, from: held.cook, cook } : { kind: 'claim', target: course, cook }
  const write = (cook: string) => tell((doc) => setFields(doc, 'courses', course, { lead: cook === NOBODY ? undefined : cook }))
  const choose = async (cook: string) => {
    setWanted(cook)
    if (cook === NOBODY) {
      write(NOBODY)
      if (held && held.cook === lead && speaksFor(lead)) await ask({ kind: 'release', target: course, cook: lead })
      return
    }
    if (held?.cook === cook || (await ask(wish(cook)))) write(cook)
  }

  return (
    <div className={css.lead}>
      <p className={css.sentence}>
        <WordChoice
          label={`Who leads ${name}`}
          value={lead}
          options={[[NOBODY, 'Nobody'] as const, ...choices.map((cook) => [cook.id, cook.name] as const)]}
          onChoose={choose}
        />{' '}
        leads it{does && sitting.length > 0 ? ` and ${sits}, but for what takes two` : ''}.
        {lead !== NOBODY && !held && sitting.length > 0 && speaksFor(lead) && phase !== 'asking' ? (
          <Button tone="word" aria-label={`${names.cookName(lead)} does all of ${name}: ${sits}`} onClick={() => choose(lead)}>
            {sits}
          </Button>
        ) : null}
        {phase === 'looking' ? <em> Seeing what it costs…</em> : null}
      </p>
      {dear && wanted !== null && sameWish(wish(wanted), dear) ? (
        <p className={css.price} role="status">
          {priceText(worse)}{' '}
          <Button tone="word" onClick={() => choose(wanted)} aria-label={`${names.cookName(wanted)} leads ${name} all the same`}>
            {names.cookName(wanted)} leads it all the same
          </Button>
        </p>
      ) : null}
      {refused ? (
        <p className={css.refused} role="alert">
          {refused}
        </p>
      ) : null}
    </div>
  )
}
