'use client'

import { type KeyboardEvent, useId, useState } from 'react'
import css from './word.module.css'

interface TextProps {
  /** What it is, for those who cannot see the sentence around it. */
  readonly label: string
  readonly text: string
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

/** Words of a sentence that can be written over: underlined with a running stitch. Enter keeps them, Escape takes them back. */
export function WordText({
  label,
  text,
  onWrite,
  empty = '…',
  display = false,
  long = false,
  type = 'text',
  autoFocus = false,
  disabled = false,
}: TextProps) {
  const [draft, setDraft] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const id = useId()
  const shown = draft ?? text
  const keep = () => {
    if (draft === null) return
    const problem = draft === text ? null : onWrite(draft)
    setWrong(problem)
    if (problem === null) setDraft(null)
  }
  const shared = {
    className: `${css.word} ${display ? css.display : ''} ${long ? css.long : ''}`,
    'aria-label': label,
    'aria-invalid': wrong ? true : undefined,
    'aria-describedby': wrong ? id : undefined,
    value: shown,
    placeholder: empty,
    autoFocus,
    disabled,
    autoComplete: 'off',
    onChange: (event: { readonly target: { readonly value: string } }) => setDraft(event.target.value.replace(/\n/g, ' ')),
    onBlur: keep,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter') {
        event.preventDefault()
        keep()
      }
      if (event.key === 'Escape' && draft !== null) {
        setDraft(null)
        setWrong(null)
      }
    },
  }
  return (
    <span className={long ? css.longHolder : css.holder}>
      {long ? <textarea rows={1} {...shared} /> : <input type={type} size={Math.max(2, (shown || empty).length)} {...shared} />}
      {wrong ? (
        <span className={css.wrong} id={id} role="alert">
          {wrong}
        </span>
      ) : null}
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
