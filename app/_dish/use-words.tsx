'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { coldWords, heatText, readHeat, ringWords, useKinds } from '#app/_words/kit.ts'
import type { Kitchen, Use } from '#lib/domain/kitchen.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import { setUses } from '#lib/plan/commands/method.ts'

interface Props {
  readonly step: Step
  readonly way: Way
  readonly index: number
  readonly named: (what: string) => string
}

const MOST = 6
const NONE = 'none'
const KINDS = Object.entries(useKinds).map(([kind, words]) => [kind as Use['kind'], words] as const)
const SIZES = (['small', 'medium', 'large'] as const).map((size) => [size, ringWords[size]] as const)
const KEEPS = (['cold', 'frozen'] as const).map((keep) => [keep, coldWords[keep]] as const)
const READY = [
  ['cold', 'from cold'],
  ['hot', 'already hot'],
] as const

/** A use as it is most often meant, when it is chosen by its kind. */
export const blankUse = (kind: Use['kind'], kitchen: Kitchen | undefined): Use => {
  switch (kind) {
    case 'oven':
      return { kind, shelves: 1, lowC: 180, highC: 190, preheated: true }
    case 'ring':
      return { kind, size: 'medium' }
    case 'cold':
      return { kind, keep: 'cold', places: 1 }
    case 'worktop':
      return { kind, places: 1 }
    case 'tool':
      return { kind, tool: kitchen?.kit.find((kit) => kit.kind === 'tool')?.tool ?? 'sink', count: 1 }
  }
}

/** What a way occupies, in words: "It takes the oven at 190 to 200°, one shelf, already hot." */
export function UseWords({ step, way, index, named }: Props) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const dish = evening.dishes.find((candidate) => candidate.id === step.dish)
  const home = step.role === 'make' ? (dish?.kitchen ?? evening.host) : evening.host
  const kitchen = evening.kitchens.find((candidate) => candidate.id === home)
  const write = (uses: readonly Use[]) => change((doc) => setUses(doc, step.id, index, uses))
  const put = (at: number, use: Use) => write(way.uses.map((other, place) => (place === at ? use : other)))
  const drop = (at: number) =>
    tell((doc) =>
      setUses(
        doc,
        step.id,
        index,
        way.uses.filter((_, place) => place !== at),
      ),
    )
  return (
    <>
      {way.uses.length === 0 ? 'It takes no kit. ' : 'It takes '}
      {way.uses.map((use, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a use is its place in the list
        <span key={at}>
          {at === 0 ? '' : at === way.uses.length - 1 ? ' and ' : ', '}
          <WordChoice
            label={named(`kit ${at + 1}`)}
            value={use.kind}
            options={[...KINDS, [NONE, 'nothing after all'] as const]}
            onChoose={(kind) => (kind === NONE ? drop(at) : put(at, blankUse(kind, kitchen)))}
          />
          <UseDetail
            use={use}
            kitchen={kitchen}
            named={(what) => named(`kit ${at + 1}, ${what}`)}
            onUse={(next) => put(at, next)}
          />
        </span>
      ))}
      {way.uses.length > 0 ? '. ' : ''}
      {way.uses.length < MOST ? (
        <Button
          tone="word"
          aria-label={named('add kit')}
          onClick={() => write([...way.uses, blankUse(way.uses.length === 0 ? 'ring' : 'worktop', kitchen)])}
        >
          {way.uses.length === 0 ? 'it takes kit' : 'and more kit'}
        </Button>
      ) : null}
    </>
  )
}

interface DetailProps {
  readonly use: Use
  readonly kitchen: Kitchen | undefined
  readonly named: (what: string) => string
  readonly onUse: (use: Use) => string | null
}

const WRONG_COUNT = 'Write a whole number.'

function UseDetail({ use, kitchen, named, onUse }: DetailProps) {
  const count = (make: (count: number) => Use) => (text: string) => {
    const found = /^\s*(\d{1,2})\b/.exec(text)
    const value = Number(found?.[1])
    return found && value > 0 ? (onUse(make(value)) === null ? null : WRONG_COUNT) : WRONG_COUNT
  }
  switch (use.kind) {
    case 'ring':
      return (
        <>
          {', '}
          <WordChoice
            label={named('size of the ring')}
            value={use.size}
            options={SIZES}
            onChoose={(size) => onUse({ ...use, size })}
          />
        </>
      )
    case 'oven': {
      const ovens = (kitchen?.kit ?? []).filter((kit) => kit.kind === 'oven')
      return (
        <>
          {' at '}
          <WordText
            label={named('temperature')}
            text={heatText(use.lowC, use.highC)}
            onWrite={(text) => {
              const heat = readHeat(text)
              return heat === null ? 'Write degrees, such as 190 to 200°.' : onUse({ ...use, lowC: heat[0], highC: heat[1] })
            }}
          />
          {', '}
          <WordText
            label={named('shelves')}
            text={use.shelves === 1 ? '1 shelf' : `${use.shelves} shelves`}
            onWrite={count((shelves) => ({ ...use, shelves }))}
          />
          {', '}
          <WordChoice
            label={named('cold or hot')}
            value={use.preheated ? 'hot' : 'cold'}
            options={READY}
            onChoose={(ready) => onUse({ ...use, preheated: ready === 'hot' })}
          />
          {ovens.length > 1 ? (
            <>
              {', in '}
              <WordChoice
                label={named('which oven')}
                value={use.oven ?? ''}
                options={[['', 'any of them'] as const, ...ovens.map((oven) => [oven.id, oven.name] as const)]}
                onChoose={(oven) => {
                  const { oven: _before, ...rest } = use
                  onUse(oven ? { ...rest, oven } : rest)
                }}
              />
            </>
          ) : null}
        </>
      )
    }
    case 'cold':
      return (
        <>
          {', '}
          <WordText
            label={named('places')}
            text={use.places === 1 ? '1 place' : `${use.places} places`}
            onWrite={count((places) => ({ ...use, places }))}
          />
          {' in the '}
          <WordChoice
            label={named('fridge or freezer')}
            value={use.keep}
            options={KEEPS}
            onChoose={(keep) => onUse({ ...use, keep })}
          />
        </>
      )
    case 'worktop':
      return (
        <>
          {', '}
          <WordText
            label={named('places')}
            text={use.places === 1 ? '1 place' : `${use.places} places`}
            onWrite={count((places) => ({ ...use, places }))}
          />
        </>
      )
    case 'tool': {
      const tools = [...new Set([...(kitchen?.kit ?? []).flatMap((kit) => (kit.kind === 'tool' ? [kit.tool] : [])), use.tool])]
      return (
        <>
          {', '}
          <WordChoice
            label={named('which tool')}
            value={use.tool}
            options={tools.map((tool) => [tool, tool] as const)}
            onChoose={(tool) => onUse({ ...use, tool })}
          />
        </>
      )
    }
  }
}
