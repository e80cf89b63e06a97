'use client'

import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { careWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { heatText, readDegrees, readHeat } from '#app/_words/heat.ts'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import { assumedWords, doubtWords } from '#app/_words/recipe.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Care } from '#lib/domain/menu.ts'
import type { DishDraft, NewKey, StepDraft } from '#lib/recipes/draft.ts'
import {
  changeStep,
  makeIngredient,
  type PlaceWord,
  placeOf,
  setAside,
  settleStep,
  toolsOf,
  withHeat,
  withItsCare,
  withMinutes,
  withPlace,
  withTools,
  withUpTo,
} from './correct.ts'
import { Flag, MarkedText } from './flag.tsx'
import { moved } from './menu-draft.ts'
import css from './recipes.module.css'

interface Props {
  readonly draft: DishDraft
  readonly step: StepDraft
  readonly sorting: boolean
  readonly newKey: NewKey
  readonly onChange: (draft: DishDraft) => void
}

const CARES = Object.entries(careWords).map(([care, words]) => [care as Care, words] as const)
const PLACE_WORDS: Readonly<Record<PlaceWord, string>> = {
  none: 'anywhere',
  worktop: 'on the worktop',
  small: `on a ${ringWords.small} ring`,
  medium: `on a ${ringWords.medium} ring`,
  large: `on a ${ringWords.large} ring`,
  oven: 'in the oven',
  cold: `in the ${coldWords.cold}`,
  frozen: `in the ${coldWords.frozen}`,
}
const PLACE_OPTIONS = Object.entries(PLACE_WORDS).map(([place, words]) => [place as PlaceWord, words] as const)
const WRONG = 'Write a time, such as 25 min or 1 h 30.'
const LONGEST = 400

/** One step: the recipe's own words, and below them what was understood as a sentence with blanks. */
export function StepRow({ draft, step, sorting, newKey, onChange }: Props) {
  const { key, way, until } = step
  const at = draft.steps.findIndex((each) => each.key === key)
  const name = step.text.length > 40 ? `${step.text.slice(0, 38).trimEnd()}…` : step.text
  const named = (what: string) => `${name}: ${what}`
  const put = (next: StepDraft): null => {
    onChange(changeStep(draft, key, () => next))
    return null
  }
  const oven = way.uses.find((use) => use.kind === 'oven')
  const likely = way.takes.likely
  const isOpen = step.doubts.length > 0 || step.assumed.length > 0
  return (
    <li className={css.row}>
      <Entry id={key}>
        <p className={css.own}>
          <MarkedText text={step.text} doubts={step.doubts} />
        </p>
        <p className={css.words}>
          <WordChoice label={named('care')} value={way.care} options={CARES} onChoose={(care) => put(withItsCare(step, care))} />
          {way.care === 'leave' || placeOf(way) === 'none' ? ' ' : ', '}
          <WordChoice
            label={named('where')}
            value={placeOf(way)}
            options={PLACE_OPTIONS}
            onChoose={(place) => put(withPlace(step, place))}
          />
          {oven?.kind === 'oven' ? (
            <>
              {' '}
              at{' '}
              <WordText
                field="heat"
                label={named('heat')}
                text={heatText(oven.lowC, oven.highC)}
                onWrite={(text) => {
                  const heat = readHeat(text)
                  return heat ? put(withHeat(step, ...heat)) : 'Write a heat, such as 180, 180 to 200, 350 F or gas 4.'
                }}
              />
            </>
          ) : null}
          , usually{' '}
          <WordText
            field="minutes"
            label={named('usual minutes')}
            text={durationText(likely)}
            onWrite={(text) => {
              const read = readDuration(text)
              return read === null || secondsOf(read) === 0 ? WRONG : put(withMinutes(step, read))
            }}
          />
          {way.care === 'leave' ? (
            <>
              , at most{' '}
              <WordText
                field="most"
                label={named('at most')}
                text={way.upTo === undefined ? '' : durationText(way.upTo)}
                empty="no longer"
                onWrite={(text) => {
                  if (text.trim() === '' || /^no longer$/i.test(text.trim())) return put(withUpTo(step, null))
                  const read = readDuration(text.replace(/^\s*(up to|at most)\s*/i, ''))
                  return read === null ? WRONG : put(withUpTo(step, read))
                }}
              />
            </>
          ) : null}
          , with{' '}
          <WordText
            field="tools"
            label={named('tools')}
            text={toolsOf(way).join(', ')}
            empty="no tool"
            onWrite={(text) => {
              const tools = text
                .split(',')
                .map((tool) => tool.trim().replace(/^the /i, '').slice(0, 40))
                .filter(Boolean)
              return put(withTools(step, [...new Set(tools)]))
            }}
          />
          . Ready when{' '}
          <WordText
            field="sign"
            label={named('sign that it is ready')}
            text={until.sign ?? ''}
            empty="its time is over"
            onWrite={(text) => {
              const { sign: _before, ...rest } = until
              return put({ ...step, until: text.trim() ? { ...rest, sign: text.trim().slice(0, 200) } : rest })
            }}
          />
          {until.coreC === undefined ? null : (
            <>
              , at{' '}
              <WordText
                field="core"
                label={named('heat inside')}
                text={`${until.coreC}°`}
                onWrite={(text) => {
                  const { coreC: _before, ...rest } = until
                  if (text.trim() === '') return put({ ...step, until: rest })
                  const coreC = readDegrees(text)
                  return coreC === null ? 'Write degrees, such as 63 or 145 F.' : put({ ...step, until: { ...until, coreC } })
                }}
              />{' '}
              inside
            </>
          )}
          .
        </p>
        {step.aside.length > 0 ? (
          <p className={css.said}>Read, and used nowhere yet: {step.aside.map((words) => `“${words}”`).join(', ')}.</p>
        ) : null}
        {step.doubts.map((doubt) => (
          <Flag key={`${doubt.kind}.${doubt.from}`} word="Not understood">
            {doubtWords[doubt.kind](step.text.slice(doubt.from, doubt.to))}
          </Flag>
        ))}
        {step.assumed.map((kind) => (
          <Flag key={kind} word="Assumed">
            {assumedWords[kind](likely)}
          </Flag>
        ))}
        {step.text.length > LONGEST ? (
          <Flag word="Too long">A step holds {LONGEST} letters: the end of it is cut off.</Flag>
        ) : null}
        {isOpen ? (
          <span className={css.choices}>
            <Button tone="word" onClick={() => onChange(settleStep(draft, key))} aria-label={`${name}: right as it is`}>
              Right as it is
            </Button>
            <Button tone="word" onClick={() => onChange(setAside(draft, key))} aria-label={`${name}: leave it out`}>
              Leave it out
            </Button>
          </span>
        ) : null}
        {sorting ? (
          <Moves
            name={name}
            isFirst={at === 0}
            isLast={at === draft.steps.length - 1}
            onMove={(by) => onChange({ ...draft, steps: moved(draft.steps, key, by) })}
            onRemove={() => onChange(setAside(draft, key))}
            into={[['ingredients', 'the ingredients']]}
            onInto={() => onChange(makeIngredient(draft, key, newKey))}
          />
        ) : null}
      </Entry>
    </li>
  )
}
