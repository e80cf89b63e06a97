'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { replyWords } from '#app/_words/guest.ts'
import { needText } from '#app/_words/need.ts'
import { NEED_CHOICES, usualGrade } from '#app/_words/need-choices.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Guest } from '#lib/domain/people.ts'
import { newGuest } from './guest-edit.ts'
import css from './guests.module.css'
import type { Guests } from './use-guests.ts'

const REPLIES = (['yes', 'maybe', 'waiting'] as const).map((reply) => [reply, replyWords[reply]] as const)

const EATS: readonly (readonly [value: string, words: string, group?: string])[] = [
  ['unknown', 'not known yet'],
  ['everything', 'eats everything'],
  ...NEED_CHOICES.map(([need, , group]) => [need, needText({ need, grade: usualGrade(need) }), group] as const),
]

const needsOf = (eats: string): Guest['needs'] => {
  if (eats === 'unknown') return null
  return eats === 'everything' ? [] : [{ need: eats, grade: usualGrade(eats) }]
}

interface Wanted {
  readonly name: string
  readonly reply: 'yes' | 'maybe' | 'waiting'
  readonly eats: string
}

const NOBODY: Wanted = { name: '', reply: 'yes', eats: 'unknown' }

/** Writes somebody down who told by phone: a name, whether they come, what they do not eat. The rest opens below. */
export function AddGuest({ desk, onAdded }: { readonly desk: Guests; readonly onAdded: (name: string) => void }) {
  const [wanted, setWanted] = useState(NOBODY)
  const [wrong, setWrong] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const add = async () => {
    if (wanted.name === '') return setWrong('Write a name first.')
    setBusy(true)
    const guest = { ...newGuest(wanted.name), reply: wanted.reply, needs: needsOf(wanted.eats) }
    const asked = await desk.ask({ kind: 'add', guest })
    setBusy(false)
    setWrong(asked.ok ? null : asked.why)
    if (!asked.ok) return
    setWanted(NOBODY)
    onAdded(wanted.name)
  }
  return (
    <section className={css.add} aria-label="Write somebody down">
      <p className={css.words}>
        <WordText
          label="Name of a new guest"
          text={wanted.name}
          empty="Somebody"
          onWrite={(text) => {
            setWanted({ ...wanted, name: cleanText(text.trim(), false).slice(0, 80) })
            return null
          }}
        />{' '}
        <WordChoice
          label="The new guest comes or not"
          value={wanted.reply}
          options={REPLIES}
          onChoose={(reply) => setWanted({ ...wanted, reply })}
        />
        . About food:{' '}
        <WordChoice
          label="What the new guest does not eat"
          value={wanted.eats}
          options={EATS}
          onChoose={(eats) => setWanted({ ...wanted, eats })}
        />
        .{' '}
        <Button tone="soft" onClick={add} disabled={busy}>
          Write them down
        </Button>
      </p>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </section>
  )
}
