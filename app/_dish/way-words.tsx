'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { careWords, handsWords } from '#app/_words/care.ts'
import { durationText, readDuration, readSpan, spanText } from '#app/_words/duration.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Care, Step, Way } from '#lib/domain/menu.ts'
import { setWay } from '#lib/plan/commands/method.ts'
import css from './step.module.css'
import { TouchWords } from './touch-words.tsx'
import { UseWords } from './use-words.tsx'

const WRONG = 'Write minutes, such as 25 min or 1 h 30.'
const CARES = Object.entries(careWords).map(([care, words]) => [care as Care, words] as const)
const HANDS = (['1', '2', '3'] as const).map((count) => [count, handsWords[count === '1' ? 1 : count === '2' ? 2 : 3]] as const)

const longer = (a: string, b: string): string => (secondsOf(a) >= secondsOf(b) ? a : b)
const shorter = (a: string, b: string): string => (secondsOf(a) <= secondsOf(b) ? a : b)

/** What a way is when its care changes: left alone, a step is put in and taken out; otherwise it has no touches. */
export const withCare = (way: Way, care: Care): Way => {
  const { upTo: _upTo, ...rest } = way
  if (care !== 'leave') return { ...rest, care, cooks: care === 'eye' ? 1 : way.cooks, touches: [] }
  const touches: Way['touches'] =
    way.touches.length > 0
      ? way.touches
      : [
          { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
          { when: 'out', takes: 'PT1M', lateBy: 'PT2M' },
        ]
  return { ...way, care, cooks: 1, touches }
}

/** One way of doing a step, in a sentence. */
export function WayWords({ step, way, index }: { readonly step: Step; readonly way: Way; readonly index: number }) {
  const { change } = useEdit()
  const set = (patch: Partial<Way>) => change((doc) => setWay(doc, step.id, index, { ...way, ...patch }))
  const which = step.ways.length > 1 ? `, way ${index + 1}` : ''
  const named = (what: string) => `${step.does || 'This step'}${which}: ${what}`
  return (
    <p className={css.words}>
      <WordChoice
        label={named('care')}
        value={way.care}
        options={CARES}
        onChoose={(care) => change((doc) => setWay(doc, step.id, index, withCare(way, care)))}
      />
      {way.care === 'hands-on' ? (
        <>
          {' '}
          for{' '}
          <WordChoice
            label={named('how many cooks')}
            value={way.cooks === 1 ? '1' : way.cooks === 2 ? '2' : '3'}
            options={HANDS}
            onChoose={(cooks) => set({ cooks: Number(cooks) })}
          />
        </>
      ) : null}
      , usually{' '}
      <WordText
        label={named('usual minutes')}
        text={durationText(way.takes.likely)}
        onWrite={(text) => {
          const likely = readDuration(text)
          if (likely === null || secondsOf(likely) === 0) return WRONG
          const takes = { least: shorter(way.takes.least, likely), likely, most: longer(way.takes.most, likely) }
          return set({ takes, ...(way.upTo === undefined ? {} : { upTo: longer(way.upTo, takes.most) }) })
        }}
      />
      , can be{' '}
      <WordText
        label={named('least and most minutes')}
        text={spanText(way.takes.least, way.takes.most)}
        onWrite={(text) => {
          const span = readSpan(text)
          if (span === null) return 'Write two times, such as 20 to 35 min.'
          const [least, most] = span
          const likely = shorter(longer(way.takes.likely, least), most)
          return set({ takes: { least, likely, most }, ...(way.upTo === undefined ? {} : { upTo: longer(way.upTo, most) }) })
        }}
      />
      {way.care === 'leave' ? (
        <>
          , and may stay{' '}
          <WordText
            label={named('longest it may stay')}
            text={way.upTo === undefined ? '' : `up to ${durationText(way.upTo)}`}
            empty="no longer"
            onWrite={(text) => {
              const said = text.replace(/^\s*up to\s*/i, '').trim()
              if (said === '' || /^no longer$/i.test(said)) return set({ upTo: undefined })
              const upTo = readDuration(said)
              return upTo === null ? WRONG : set({ upTo: longer(upTo, way.takes.most) })
            }}
          />
        </>
      ) : null}
      . <UseWords step={step} way={way} index={index} named={named} />
      {way.care === 'leave' ? (
        <TouchWords way={way} named={named} onTouches={(touches) => set({ touches: [...touches] })} />
      ) : null}
    </p>
  )
}
