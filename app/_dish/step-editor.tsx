'use client'

import { ClaimLine } from '#app/_frame/claim.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankWay } from '#app/_menu/blank.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { roleWords, whereWords } from '#app/_words/care.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Step } from '#lib/domain/menu.ts'
import { removeWay, setWay } from '#lib/plan/commands/method.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { LagWords } from './lag-words.tsx'
import css from './step.module.css'
import { WayWords } from './way-words.tsx'
import { WindowWords } from './window-words.tsx'

const MOST_WAYS = 3

const choices = <T extends string>(table: Readonly<Record<T, string>>): readonly (readonly [T, string])[] =>
  Object.entries<string>(table).map(([value, words]) => [value as T, words] as const)

/** A step as sentences: what it does, its ways, when it may be, what it waits for, where it belongs. */
export function StepEditor({ step, isFresh }: { readonly step: Step; readonly isFresh: boolean }) {
  const { change, tell } = useEdit()
  const set = (patch: Partial<Pick<Step, 'does' | 'role' | 'where' | 'until'>>) =>
    change((doc) => setFields(doc, 'steps', step.id, patch))
  const name = step.does || 'this step'
  return (
    <div className={css.editor}>
      <p className={css.words}>
        <WordText
          long
          label="What is done"
          text={step.does}
          empty="What is done, such as: peel the potatoes"
          autoFocus={isFresh}
          onWrite={(text) => set({ does: cleanText(text.trim(), false) })}
        />
        It is done{' '}
        <WordChoice
          label={`Where ${name} is done`}
          value={step.where}
          options={choices(whereWords)}
          onChoose={(where) => set({ where })}
        />
        .
      </p>
      {step.ways.map((way, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a way is its place in the list
        <div className={css.way} key={index}>
          <span className={css.or}>{index === 0 ? '' : 'or'}</span>
          <div>
            <WayWords step={step} way={way} index={index} />
            {step.ways.length > 1 ? (
              <Button
                tone="late"
                onClick={() => tell((doc) => removeWay(doc, step.id, index))}
                aria-label={`Remove way ${index + 1} of ${name}`}
              >
                Not this way
              </Button>
            ) : null}
          </div>
        </div>
      ))}
      {step.ways.length < MOST_WAYS ? (
        <Button tone="word" onClick={() => tell((doc) => setWay(doc, step.id, step.ways.length, step.ways[0] ?? blankWay))}>
          {step.ways.length === 1 ? 'Add another way' : 'Add a third way'}
        </Button>
      ) : null}
      <p className={css.words}>
        Ready when{' '}
        <WordText
          label={`${name}: sign that it is ready`}
          text={step.until?.sign ?? ''}
          empty="you say how it looks or feels"
          onWrite={(text) => {
            const sign = cleanText(text.trim(), false)
            const { coreC } = step.until ?? {}
            return set({
              until:
                sign || coreC !== undefined
                  ? { ...(coreC === undefined ? {} : { coreC }), ...(sign ? { sign } : {}) }
                  : undefined,
            })
          }}
        />
        , inside{' '}
        <WordText
          label={`${name}: temperature inside`}
          text={step.until?.coreC === undefined ? '' : `${step.until.coreC}°`}
          empty="no matter how warm"
          onWrite={(text) => {
            const { sign } = step.until ?? {}
            const degrees = text.trim() === '' ? undefined : Number(text.replace(/[°c\s]/gi, '').replace(',', '.'))
            if (degrees !== undefined && !Number.isFinite(degrees)) return 'Write degrees, such as 74°.'
            return set({
              until:
                sign || degrees !== undefined
                  ? { ...(sign ? { sign } : {}), ...(degrees === undefined ? {} : { coreC: degrees }) }
                  : undefined,
            })
          }}
        />
        .
      </p>
      <WindowWords step={step} />
      <LagWords step={step} />
      <p className={css.words}>
        It is{' '}
        <WordChoice
          label={`What kind of step ${name} is`}
          value={step.role}
          options={choices(roleWords)}
          onChoose={(role) => set({ role })}
        />
        .
      </p>
      <p className={css.claim}>
        <ClaimLine target={step.id} name={name} giving />
      </p>
    </div>
  )
}
