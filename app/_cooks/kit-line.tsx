'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { readDegrees } from '#app/_words/heat.ts'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import { readCount } from '#app/_words/read-count.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import { setKit } from '#lib/plan/commands/kitchen.ts'

type OfKind<K extends Kit['kind']> = Extract<Kit, { kind: K }>

interface Props<K extends Kit = Kit> {
  readonly kit: K
  /** What a blank of it is called, for those who cannot see the sentence. */
  readonly named: (what: string) => string
  readonly onKit: (kit: Kit) => string | null
  readonly autoFocus: boolean
}

/** A piece of kit as a sentence with blanks, one for each of its fields. */
export function KitLine({
  kitchen,
  kit,
  name,
  autoFocus,
}: {
  readonly kitchen: Kitchen
  readonly kit: Kit
  readonly name: string
  readonly autoFocus: boolean
}) {
  const { change } = useEdit()
  const shared = {
    named: (what: string) => `${name}: ${what}`,
    onKit: (next: Kit) => change((doc) => setKit(doc, kitchen.id, next)),
    autoFocus,
  }
  switch (kit.kind) {
    case 'ring':
      return <RingWords kit={kit} {...shared} />
    case 'oven':
      return <OvenWords kit={kit} {...shared} />
    case 'cold':
      return <ColdWords kit={kit} {...shared} />
    case 'worktop':
      return <WorktopWords kit={kit} {...shared} />
    case 'tool':
      return <ToolWords kit={kit} {...shared} />
  }
}

const whole =
  (most: number, what: string, write: (value: number) => string | null) =>
  (text: string): string | null => {
    const value = readCount(text)
    return value === null || value > most ? `Write ${what}, from 1 to ${most}.` : write(value)
  }

function RingWords({ kit, named, onKit, autoFocus }: Props<OfKind<'ring'>>) {
  return (
    <>
      <WordText
        field={`${kit.id} how many`}
        label={named('how many')}
        text={String(kit.count)}
        autoFocus={autoFocus}
        onWrite={whole(8, 'how many rings', (count) => onKit({ ...kit, count }))}
      />{' '}
      <WordChoice
        label={named('size')}
        value={kit.size}
        options={(['small', 'medium', 'large'] as const).map((size) => [size, ringWords[size]] as const)}
        onChoose={(size) => onKit({ ...kit, size })}
      />{' '}
      {kit.count === 1 ? 'ring' : 'rings'}
    </>
  )
}

const degrees = (least: number, most: number, what: string, write: (value: number) => string | null) => (text: string) => {
  const value = readDegrees(text)
  return value === null || value < least || value > most ? `Write ${what}, from ${least}° to ${most}°.` : write(value)
}

function OvenWords({ kit, named, onKit, autoFocus }: Props<OfKind<'oven'>>) {
  return (
    <>
      <WordText
        field={`${kit.id} name`}
        label={named('name')}
        text={kit.name}
        empty="Oven"
        autoFocus={autoFocus}
        onWrite={(text) => onKit({ ...kit, name: cleanText(text.trim(), false).slice(0, 60) })}
      />
      , with{' '}
      <WordText
        field={`${kit.id} shelves`}
        label={named('shelves')}
        text={kit.shelves === 1 ? '1 shelf' : `${kit.shelves} shelves`}
        onWrite={whole(8, 'how many shelves', (shelves) => onKit({ ...kit, shelves }))}
      />
      , up to{' '}
      <WordText
        field={`${kit.id} hottest`}
        label={named('hottest')}
        text={`${kit.maxC}°`}
        onWrite={degrees(40, 500, 'degrees Celsius', (maxC) => onKit({ ...kit, maxC }))}
      />
      ; heats{' '}
      <WordText
        field={`${kit.id} degrees a minute when heating`}
        label={named('degrees a minute when heating')}
        text={`${kit.upPerMin}°`}
        onWrite={degrees(0.5, 60, 'degrees a minute', (upPerMin) => onKit({ ...kit, upPerMin }))}
      />{' '}
      and cools{' '}
      <WordText
        field={`${kit.id} degrees a minute when cooling`}
        label={named('degrees a minute when cooling')}
        text={`${kit.downPerMin}°`}
        onWrite={degrees(0.5, 60, 'degrees a minute', (downPerMin) => onKit({ ...kit, downPerMin }))}
      />{' '}
      a minute
    </>
  )
}

function ColdWords({ kit, named, onKit, autoFocus }: Props<OfKind<'cold'>>) {
  return (
    <>
      {'A '}
      <WordChoice
        label={named('fridge or freezer')}
        value={kit.keep}
        options={(['cold', 'frozen'] as const).map((keep) => [keep, coldWords[keep]] as const)}
        onChoose={(keep) => onKit({ ...kit, keep })}
      />
      {' for '}
      <WordText
        field={`${kit.id} places`}
        label={named('places')}
        text={String(kit.places)}
        autoFocus={autoFocus}
        onWrite={whole(60, 'how many trays or pots', (places) => onKit({ ...kit, places }))}
      />
      {kit.places === 1 ? ' tray or pot' : ' trays or pots'}
    </>
  )
}

function WorktopWords({ kit, named, onKit, autoFocus }: Props<OfKind<'worktop'>>) {
  return (
    <>
      {'Worktop for '}
      <WordText
        field={`${kit.id} places`}
        label={named('places')}
        text={String(kit.places)}
        autoFocus={autoFocus}
        onWrite={whole(60, 'how many plates or boards', (places) => onKit({ ...kit, places }))}
      />
      {kit.places === 1 ? ' plate or board' : ' plates or boards'}
    </>
  )
}

function ToolWords({ kit, named, onKit, autoFocus }: Props<OfKind<'tool'>>) {
  return (
    <>
      <WordText
        field={`${kit.id} how many`}
        label={named('how many')}
        text={String(kit.count)}
        onWrite={whole(60, 'how many there are', (count) => onKit({ ...kit, count }))}
      />
      {kit.count === 1 ? ' ' : ' × '}
      <WordText
        field={`${kit.id} what it is`}
        label={named('what it is')}
        text={kit.tool}
        autoFocus={autoFocus}
        onWrite={(text) => {
          const tool = cleanText(text.trim(), false).slice(0, 40)
          return tool ? onKit({ ...kit, tool }) : 'Write what it is called, such as blender.'
        }}
      />
    </>
  )
}
