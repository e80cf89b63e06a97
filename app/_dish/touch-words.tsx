'use client'

import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { touchKind, touchWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Touch, Way } from '#lib/domain/menu.ts'

interface Props {
  readonly way: Way
  readonly named: (what: string) => string
  readonly onTouches: (touches: readonly Touch[]) => string | null
}

const WRONG = 'Write minutes, such as 2 min.'
const KINDS = (['in', 'every', 'out'] as const).map((kind) => [kind, touchWords[kind]] as const)
const MOST = 6

/** When somebody stands at a step that is otherwise left alone. */
export function TouchWords({ way, named, onTouches }: Props) {
  const put = (index: number, touch: Touch) => onTouches(way.touches.map((other, at) => (at === index ? touch : other)))
  const minutes = (index: number, touch: Touch, field: 'takes' | 'lateBy') => (text: string) => {
    const duration = readDuration(text)
    return duration === null ? WRONG : put(index, { ...touch, [field]: duration })
  }
  return (
    <>
      {' '}
      {way.touches.length === 0 ? 'Nobody has to touch it. ' : 'Somebody has to '}
      {way.touches.map((touch, index) => {
        const kind = touchKind(touch)
        const which = named(`touch ${index + 1}`)
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a touch is its place in the list
          <span key={index}>
            {index === 0 ? '' : index === way.touches.length - 1 ? ' and ' : ', '}
            <WordChoice
              label={which}
              value={kind}
              options={KINDS}
              onChoose={(chosen) => put(index, { ...touch, when: chosen === 'every' ? { every: 'PT30M' } : chosen })}
            />
            {typeof touch.when === 'object' ? (
              <>
                {' '}
                <WordText
                  label={`${which}: how often`}
                  text={durationText(touch.when.every)}
                  onWrite={(text) => {
                    const every = readDuration(text)
                    return every === null || secondsOf(every) === 0 ? WRONG : put(index, { ...touch, when: { every } })
                  }}
                />
              </>
            ) : null}{' '}
            (<WordText label={`${which}: minutes`} text={durationText(touch.takes)} onWrite={minutes(index, touch, 'takes')} />,
            may be late by{' '}
            <WordText
              label={`${which}: may be late by`}
              text={durationText(touch.lateBy)}
              onWrite={minutes(index, touch, 'lateBy')}
            />
            )
            {way.touches.length > 1 ? (
              <>
                {' '}
                <Button
                  tone="quiet"
                  aria-label={`${which}: not needed`}
                  onClick={() => onTouches(way.touches.filter((_, at) => at !== index))}
                >
                  leave out
                </Button>
              </>
            ) : null}
          </span>
        )
      })}
      {way.touches.length > 0 ? '. ' : ''}
      {way.touches.length < MOST ? (
        <Button
          tone="word"
          aria-label={named('add a touch')}
          onClick={() => onTouches([...way.touches, { when: { every: 'PT30M' }, takes: 'PT1M', lateBy: 'PT5M' }])}
        >
          see to it in between
        </Button>
      ) : null}
    </>
  )
}
