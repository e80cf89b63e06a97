'use client'

import { type KeyboardEvent, useId, useState } from 'react'
import { useDraft } from './drafts.tsx'
import css from './word.module.css'

interface TextProps {
  /** What it is, for those who cannot see the sentence around it. */
  readonly label: string
  readonly text: string
  /** What keeps the draft apart from those of other fields, on this screen or within the nearest Entry; the label if absent. */
  readonly field?: string
  /** Writes the new words down; returns what is wrong with them, or null. */
  readonly onWrite: (text: string) => string | null
  /** Shown while it is empty. */
  readonly empty?: string
  readonly display?: boolean
  /** Words that may need several lines. */
  readonly long?: boolean
  readonly type?: 'text' | 'date'
  readonly autoFocus?: boolean
  readonly disabled?: boolean
}

/**
 * Words of a sentence that can be written over: underlined with a running stitch. Enter keeps them, Escape takes them back.
 * What is typed and not kept yet outlives the page, and is then said not to be sent.
 */
export function WordText({
  label,
  text,
  field = label,
  onWrite,
  empty = '…',
  display = false,
  long = false,
  type = 'text',
  autoFocus = false,
  disabled = false,
}: TextProps) {
  const draft = useDraft(field, { label, base: text })
  const [wrong, setWrong] = useState<string | null>(null)
  const id = useId()
  const shown = draft.text ?? text
  const isUnsent = draft.isRestored && draft.text !== text && !disabled
  const keep = () => {
    if (draft.text === null) return
    const problem = draft.text === text ? null : onWrite(draft.text)
    setWrong(problem)
    if (problem === null) draft.clear()
  }
  const takeBack = () => {
    draft.clear()
    setWrong(null)
  }
  const shared = {
    className: `${css.word} ${display ? css.display : ''} ${long ? css.long : ''}`,
    'aria-label': label,
    'aria-invalid': wrong ? true : undefined,
    'aria-describedby': wrong ? id : isUnsent ? `${id}-unsent` : undefined,
    'data-words': '',
    'data-draft': draft.text === null ? undefined : '',
    value: shown,
    placeholder: empty,
    autoFocus,
    disabled,
    autoComplete: 'off',
    onChange: (event: { readonly target: { readonly value: string } }) => draft.write(event.target.value.replace(/\n/g, ' ')),
    onBlur: keep,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter') {
        event.preventDefault()
        keep()
      }
      if (event.key === 'Escape' && draft.text !== null) takeBack()
    },
  }
  return (
    <span className={long ? css.longHolder : css.holder}>
      {long ? <textarea rows={1} {...shared} /> : <input type={type} size={Math.max(2, (shown || empty).length)} {...shared} />}
      {isUnsent ? (
        <Unsent id={`${id}-unsent`} label={label} now={draft.base === text ? null : text} keep={keep} takeBack={takeBack} />
      ) : null}
      {wrong ? (
        <span className={css.wrong} id={id} role="alert">
          {wrong}
        </span>
      ) : null}
    </span>
  )
}

interface UnsentProps {
  readonly id: string
  readonly label: string
  /** What the field says meanwhile, when somebody has changed it. */
  readonly now: string | null
  readonly keep: () => void
  readonly takeBack: () => void
}

/** Beside a field whose words were typed before the page was loaded again: nobody else has seen them. */
function Unsent({ id, label, now, keep, takeBack }: UnsentProps) {
  // Pressing one of them must not take the caret out of the field first, which would keep the words.
  const stay = (event: { preventDefault: () => void }) => event.preventDefault()
  return (
    <span className={css.unsent}>
      <span id={id}>
        Not sent yet{now === null ? '' : `; meanwhile it became “${now}”`}: Enter keeps it, Escape takes it back.
      </span>{' '}
      <button type="button" onMouseDown={stay} onClick={keep} aria-label={`Keep it: ${label}`}>
        Keep it
      </button>{' '}
      <button type="button" onMouseDown={stay} onClick={takeBack} aria-label={`Take it back: ${label}`}>
        Take it back
      </button>
    </span>
  )
}

interface ChoiceProps<T extends string> {
  readonly label: string
  readonly value: T
  /** Those that follow one another with the same group stand under its name. */
  readonly options: readonly (readonly [value: T, words: string, group?: string])[]
  readonly onChoose: (value: T) => void
  readonly disabled?: boolean
}

/** A word of a sentence that is one of several: the same stitch under a list to choose from. */
export function WordChoice<T extends string>({ label, value, options, onChoose, disabled = false }: ChoiceProps<T>) {
  return (
    <select
      className={`${css.word} ${css.choice}`}
      aria-label={label}
      value={value}
      disabled={disabled}
      onChange={(event) => {
        const chosen = options.find(([option]) => option === event.target.value)
        if (chosen) onChoose(chosen[0])
      }}
    >
      {groupsOf(options).map(({ group, members }) =>
        group === undefined ? (
          members.map(([option, words]) => <Option key={option} option={option} words={words} />)
        ) : (
          <optgroup key={group} label={group}>
            {members.map(([option, words]) => (
              <Option key={option} option={option} words={words} />
            ))}
          </optgroup>
        ),
      )}
    </select>
  )
}

function Option({ option, words }: { readonly option: string; readonly words: string }) {
  return <option value={option}>{words}</option>
}

type Options<T extends string> = ChoiceProps<T>['options']

const groupsOf = <T extends string>(options: Options<T>): readonly { group: string | undefined; members: Options<T> }[] => {
  const groups: { group: string | undefined; members: Options<T>[number][] }[] = []
  for (const option of options) {
    const last = groups[groups.length - 1]
    if (last && last.group === option[2]) last.members.push(option)
    else groups.push({ group: option[2], members: [option] })
  }
  return groups
}
