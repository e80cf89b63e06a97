'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './cooks.module.css'

type Kit = Kitchen['kit'][number]

const NONE = ''
const KINDS = [
  [NONE, 'something else'],
  ['ring', 'rings'],
  ['oven', 'an oven'],
  ['cold', 'a fridge or freezer'],
  ['worktop', 'worktop'],
  ['tool', 'a tool'],
] as const

const blankKit = (kind: Kit['kind']): Kit => {
  const id = newId()
  switch (kind) {
    case 'ring':
      return { id, kind, size: 'medium', count: 1 }
    case 'oven':
      return { id, kind, name: 'Second oven', shelves: 1, maxC: 250, upPerMin: 8, downPerMin: 3 }
    case 'cold':
      return { id, kind, keep: 'cold', places: 4 }
    case 'worktop':
      return { id, kind, places: 4 }
    case 'tool':
      return { id, kind, tool: 'blender', count: 1 }
  }
}

/** What a kitchen has, each thing a line of words. */
export function KitWords({ kitchen }: { readonly kitchen: Kitchen }) {
  const { change, tell } = useEdit()
  const write = (kit: readonly Kit[]) => change((doc) => setFields(doc, 'kitchens', kitchen.id, { kit: [...kit] }))
  return (
    <section aria-labelledby={`kitchen-${kitchen.id}`}>
      <h2 id={`kitchen-${kitchen.id}`}>{kitchen.name || 'The kitchen'}</h2>
      <p className={css.quiet}>What can be in use there at one time.</p>
      <ul className={css.kit}>
        {kitchen.kit.map((kit, index) => (
          <li className={css.words} key={kit.id}>
            <KitLine kit={kit} onKit={(next) => write(kitchen.kit.map((other) => (other.id === kit.id ? next : other)))} />{' '}
            <Button
              tone="quiet"
              aria-label={`Remove kit ${index + 1}`}
              onClick={() =>
                tell((doc) => setFields(doc, 'kitchens', kitchen.id, { kit: kitchen.kit.filter((other) => other.id !== kit.id) }))
              }
            >
              leave out
            </Button>
          </li>
        ))}
      </ul>
      <p className={css.words}>
        And{' '}
        <WordChoice
          label="Add kit to the kitchen"
          value={NONE}
          options={KINDS}
          onChoose={(kind) => kind !== NONE && write([...kitchen.kit, blankKit(kind)])}
        />
      </p>
    </section>
  )
}

const whole = (text: string): number => Number(/\d+/.exec(text)?.[0] ?? 'x')

function KitLine({ kit, onKit }: { readonly kit: Kit; readonly onKit: (kit: Kit) => string | null }) {
  const number = (make: (value: number) => Kit) => (text: string) =>
    Number.isFinite(whole(text)) ? onKit(make(whole(text))) : 'Write a number.'
  switch (kit.kind) {
    case 'ring':
      return (
        <>
          <WordText label="How many rings" text={String(kit.count)} onWrite={number((count) => ({ ...kit, count }))} />{' '}
          <WordChoice
            label="Size of the rings"
            value={kit.size}
            options={(['small', 'medium', 'large'] as const).map((size) => [size, ringWords[size]] as const)}
            onChoose={(size) => onKit({ ...kit, size })}
          />{' '}
          {kit.count === 1 ? 'ring' : 'rings'}
        </>
      )
    case 'oven':
      return (
        <>
          <WordText
            label="Name of the oven"
            text={kit.name}
            onWrite={(text) => onKit({ ...kit, name: cleanText(text.trim(), false) || 'Oven' })}
          />
          {' with '}
          <WordText
            label="Shelves of the oven"
            text={kit.shelves === 1 ? '1 shelf' : `${kit.shelves} shelves`}
            onWrite={number((shelves) => ({ ...kit, shelves }))}
          />
          {', up to '}
          <WordText label="Hottest the oven gets" text={`${kit.maxC}°`} onWrite={number((maxC) => ({ ...kit, maxC }))} />
        </>
      )
    case 'cold':
      return (
        <>
          {'A '}
          <WordChoice
            label="Fridge or freezer"
            value={kit.keep}
            options={(['cold', 'frozen'] as const).map((keep) => [keep, coldWords[keep]] as const)}
            onChoose={(keep) => onKit({ ...kit, keep })}
          />
          {' with room for '}
          <WordText label="Places in it" text={String(kit.places)} onWrite={number((places) => ({ ...kit, places }))} />
          {' trays or pots'}
        </>
      )
    case 'worktop':
      return (
        <>
          {'Worktop for '}
          <WordText label="Places on the worktop" text={String(kit.places)} onWrite={number((places) => ({ ...kit, places }))} />
          {' things at once'}
        </>
      )
    case 'tool':
      return (
        <>
          <WordText label="How many of this tool" text={String(kit.count)} onWrite={number((count) => ({ ...kit, count }))} />{' '}
          <WordText
            label="Name of the tool"
            text={kit.tool}
            onWrite={(text) => (text.trim() ? onKit({ ...kit, tool: cleanText(text.trim(), false) }) : 'A tool needs a name.')}
          />
        </>
      )
  }
}
