'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { dayName } from '#app/_words/clock.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Cook, Presence } from '#lib/domain/kitchen.ts'
import { moveCook } from '#lib/plan/commands/move.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './cooks.module.css'
import type { Member } from './member.ts'

const DAYS = ['-7', '-6', '-5', '-4', '-3', '-2', '-1', '0', '1'] as const
const CLOCK = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/
const WRONG_CLOCK = 'Write a time, such as 09:00.'
const ROLES = [
  ['host', 'a host of the evening'],
  ['helper', 'a helper'],
] as const
const EATS = [
  ['eats', 'eats with the guests'],
  ['works', 'does not sit down'],
] as const

const PACES = [
  ['0.8', 'quick'],
  ['1', 'as the methods say'],
  ['1.25', 'a little slower'],
  ['1.5', 'slow'],
] as const

/** A cook in sentences: what they are, and when they are in which kitchen. */
export function CookWords({
  cook,
  member,
  isFirst,
  isLast,
}: {
  readonly cook: Cook
  readonly member: Member | undefined
  readonly isFirst: boolean
  readonly isLast: boolean
}) {
  const { evening } = usePlan()
  const { change, tell, removeWithStrip } = useEdit()
  const set = (patch: Partial<Omit<Cook, 'id'>>) => change((doc) => setFields(doc, 'cooks', cook.id, patch))
  const put = (index: number, presence: Presence) =>
    set({ presence: cook.presence.map((other, at) => (at === index ? presence : other)) })
  const pace = String(cook.pace)
  const paces = PACES.some(([value]) => value === pace)
    ? PACES
    : [...PACES, [pace, `${Math.round(cook.pace * 100)}% of the usual minutes`] as const]
  return (
    <li className={css.cook}>
      <div className={css.cookHead}>
        <h3>
          <WordText
            display
            label={`Name of the cook ${cook.name}`}
            text={cook.name}
            onWrite={(text) => (text.trim() ? set({ name: cleanText(text.trim(), false) }) : 'A cook needs a name.')}
          />
        </h3>
        <Moves
          name={cook.name}
          isFirst={isFirst}
          isLast={isLast}
          onMove={(by) => {
            const place = placeAfterMove(evening.cooks, cook.id, by)
            if (place) tell((doc) => moveCook(doc, cook.id, place))
          }}
          onRemove={() => removeWithStrip('cooks', cook.id, cook.name)}
        />
      </div>
      <p className={css.words}>
        {member ? `${member.you ? 'This is you' : `This is ${member.name}’s account`}. ` : ''}
        Is{' '}
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
        , and works{' '}
        <WordChoice
          label={`${cook.name}: pace`}
          value={pace}
          options={paces}
          onChoose={(value) => set({ pace: Number(value) })}
        />
        .
      </p>
      <ul className={css.hours} aria-label={`Hours of ${cook.name}`}>
        {cook.presence.map((presence, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: hours are their place in the list
          <li className={css.words} key={index}>
            {index === 0 ? 'Is here from ' : 'and from '}
            <AtWords
              at={presence.from}
              name={`${cook.name}, hours ${index + 1}: from`}
              date={evening.date}
              onAt={(from) => put(index, { ...presence, from })}
            />{' '}
            to{' '}
            <AtWords
              at={presence.to}
              name={`${cook.name}, hours ${index + 1}: to`}
              date={evening.date}
              onAt={(to) => put(index, { ...presence, to })}
            />
            {evening.kitchens.length > 1 ? (
              <>
                {' in '}
                <WordChoice
                  label={`${cook.name}, hours ${index + 1}: kitchen`}
                  value={presence.kitchen}
                  options={evening.kitchens.map((kitchen) => [kitchen.id, kitchen.name] as const)}
                  onChoose={(kitchen) => put(index, { ...presence, kitchen })}
                />
              </>
            ) : null}{' '}
            {cook.presence.length > 1 ? (
              <Button
                tone="quiet"
                aria-label={`${cook.name}: not these hours ${index + 1}`}
                onClick={() => set({ presence: cook.presence.filter((_, at) => at !== index) })}
              >
                leave out
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      <Button
        tone="word"
        aria-label={`Add hours for ${cook.name}`}
        onClick={() => {
          const first = Math.max(-7, Math.min(0, ...cook.presence.map((presence) => presence.from.day)) - 1)
          set({
            presence: [
              { kitchen: evening.host, from: { day: first, time: '17:00' }, to: { day: first, time: '21:00' } },
              ...cook.presence,
            ],
          })
        }}
      >
        more hours
      </Button>
    </li>
  )
}

interface AtProps {
  readonly at: Presence['from']
  readonly name: string
  readonly date: string
  readonly onAt: (at: Presence['from']) => string | null
}

function AtWords({ at, name, date, onAt }: AtProps) {
  const days = DAYS.map(
    (day) => [day, day === '0' ? 'the day itself' : day === '1' ? 'the day after' : dayName(date, Number(day))] as const,
  )
  return (
    <>
      <WordChoice
        label={`${name} day`}
        value={String(at.day)}
        options={days.map(([day, words]) => [String(day), words] as const)}
        onChoose={(day) => onAt({ ...at, day: Number(day) })}
      />{' '}
      <WordText
        label={`${name} time`}
        text={at.time}
        onWrite={(text) => {
          const found = CLOCK.exec(text.trim())
          return found ? onAt({ ...at, time: `${String(found[1]).padStart(2, '0')}:${found[2]}` }) : WRONG_CLOCK
        }}
      />
    </>
  )
}
