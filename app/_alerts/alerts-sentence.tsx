'use client'

import { Fragment, type ReactNode } from 'react'
import { WordChoice } from '#app/_ui/word.tsx'
import type { AlertsHere } from '#app/_words/alerts-here.ts'
import type { Choices } from './choices.ts'

interface Props {
  readonly here: AlertsHere
  readonly choose: (change: Partial<Choices>) => void
  readonly call: (wanted: boolean) => void
}

interface Word {
  readonly what: keyof Choices
  readonly label: string
  readonly yes: string
  readonly no: string
}

const WORDS: Readonly<Record<keyof Choices, Word>> = {
  sound: { what: 'sound', label: 'Sound', yes: 'rings', no: 'does not ring' },
  speech: { what: 'speech', label: 'Speech', yes: 'says what it is', no: 'does not speak' },
  vibration: { what: 'vibration', label: 'Vibration', yes: 'vibrates', no: 'does not vibrate' },
  awake: { what: 'awake', label: 'Screen', yes: 'stays lit during the evening', no: 'may go dark' },
}

/** What was chosen for this device, as a sentence with blanks; what cannot be had here has none. */
export function AlertsSentence({ here, choose, call }: Props) {
  const { choices, shape } = here
  const blank = ({ what, label, yes, no }: Word): ReactNode => (
    <WordChoice
      label={label}
      value={choices[what] ? 'yes' : 'no'}
      options={[
        ['yes', yes],
        ['no', no],
      ]}
      onChoose={(value) => choose({ [what]: value === 'yes' })}
    />
  )
  const isLoud = shape !== 'table'
  const does: readonly Word[] = [
    ...(isLoud && here.sound !== 'none' ? [WORDS.sound] : []),
    ...(isLoud && here.canSpeak ? [WORDS.speech] : []),
    ...(here.canVibrate ? [WORDS.vibration] : []),
  ]
  return (
    <>
      <p>
        When it calls {shape === 'worktop' ? 'somebody' : 'you'}, this device {does.length === 0 ? 'makes no sound' : null}
        {does.map((word, at) => (
          <Fragment key={word.what}>
            {at === 0 ? '' : at === does.length - 1 ? ' and ' : ', '}
            {blank(word)}
          </Fragment>
        ))}
        .
      </p>
      {here.awake === 'none' ? null : <p>Its screen {blank(WORDS.awake)}.</p>}
      {here.calls.kind === 'on' || here.calls.kind === 'off' ? (
        <p>
          While it sleeps it{' '}
          <WordChoice
            label="While it sleeps"
            value={here.calls.kind}
            options={[
              ['on', 'is called all the same'],
              ['off', 'is not called'],
            ]}
            onChoose={(value) => call(value === 'on')}
          />
          .
        </p>
      ) : null}
    </>
  )
}
