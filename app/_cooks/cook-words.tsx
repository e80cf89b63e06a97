'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { paceChoices, readTenMinutes, tenMinutes } from '#app/_words/pace.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './cooks.module.css'

const ROLES = [
  ['host', 'a host of the evening'],
  ['helper', 'a helper'],
] as const
const EATS = [
  ['eats', 'eats with the guests'],
  ['works', 'does not sit down'],
] as const

const GLASSES = [
  ['none', 'has no glass'],
  ['glass', 'has a glass'],
] as const

/** What a cook is, in a sentence: name, host or helper, at the table or not, with a glass or without, how fast. */
export function CookWords({ cook, isFresh }: { readonly cook: Cook; readonly isFresh: boolean }) {
  const { change } = useEdit()
  const set = (patch: Partial<Pick<Cook, 'name' | 'host' | 'eats' | 'pace'>> | { readonly drinks: true | undefined }) =>
    change((doc) => setFields(doc, 'cooks', cook.id, patch))
  return (
    <p className={css.words}>
      <WordText
        field="name"
        label={`Name of the cook ${cook.name}`}
        text={cook.name}
        autoFocus={isFresh}
        onWrite={(text) => {
          const name = cleanText(text.trim(), false).slice(0, 80)
          return name ? set({ name }) : 'A cook needs a name.'
        }}
      />{' '}
      is{' '}
      <WordChoice
        label={`${cook.name}: host or helper`}
        value={cook.host ? 'host' : 'helper'}
        options={ROLES}
        onChoose={(role) => set({ host: role === 'host' })}
      />
      ,{' '}
      <WordChoice
        label={`${cook.name}: eats or not`}
        value={cook.eats ? 'eats' : 'works'}
        options={EATS}
        onChoose={(eats) => set({ eats: eats === 'eats' })}
      />
      ,{' '}
      <WordChoice
        label={`${cook.name}: a glass or none`}
        value={cook.drinks ? 'glass' : 'none'}
        options={GLASSES}
        onChoose={(glass) => set({ drinks: glass === 'glass' ? true : undefined })}
      />{' '}
      from when the guests come{cook.drinks ? ' (hard work is somebody else’s from then on, if it can be)' : ''}, and works{' '}
      <WordChoice
        label={`${cook.name}: pace`}
        value={String(cook.pace)}
        options={paceChoices(cook.pace)}
        onChoose={(pace) => set({ pace: Number(pace) })}
      />
      : ten minutes of it take{' '}
      <WordText
        field="pace"
        label={`${cook.name}: what ten minutes of work take`}
        text={tenMinutes(cook.pace)}
        onWrite={(text) => {
          const pace = readTenMinutes(text)
          return pace === null ? 'Write minutes from 6 to 16, such as 11½.' : set({ pace })
        }}
      />
      .
    </p>
  )
}
