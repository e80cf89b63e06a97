'use client'

import { type ReactNode, useState } from 'react'
import { Link } from '#app/_ui/link.tsx'
import type { Note, Part, Parts, Press, Said } from './parts.ts'
import css from './sentence.module.css'
import { WordChoice, WordText } from './word.tsx'

interface Props<T> {
  readonly parts: Parts<T>
  /** Makes the change; returns what was wrong with it, or null. */
  readonly onEdit: (value: T) => string | null
  /** The id of what it is about: half-typed words are kept apart by it. */
  readonly of?: string
}

/**
 * A sentence whose blanks can be filled in; what it means and what can be pressed stand below it. What is refused is told
 * there too, and what was written stays.
 */
export function Sentence<T>({ parts, onEdit, of }: Props<T>) {
  const [refused, setRefused] = useState<string | null>(null)
  const make = (said: Said<T>): string | null => (said.kind === 'wrong' ? said.why : onEdit(said.value))
  const tell = (said: Said<T>) => setRefused(make(said))
  return (
    <div className={css.sentence}>
      <div>
        {inFlow(parts, (part) => (
          <Blank key={part.at} part={part} of={of} make={make} tell={tell} />
        ))}
      </div>
      {parts.map((part) => (isBeside(part) ? <Beside key={part.at} part={part} tell={tell} /> : null))}
      {refused ? (
        <p className={css.refused} role="alert">
          {refused}
        </p>
      ) : null}
    </div>
  )
}

type Blanks<T> = Exclude<Part<T>, string | Note | Press<T>>
const isBeside = <T,>(part: Part<T>): part is Note | Press<T> =>
  typeof part !== 'string' && (part.kind === 'note' || part.kind === 'press')

const CLOSING = /^[.,;:)]+/
const SHORT = 32

/** Words and blanks in a row. What closes a short blank is not parted from it; a stop that would stand alone in a line is left out. */
const inFlow = <T,>(parts: Parts<T>, blank: (part: Blanks<T>) => ReactNode): readonly ReactNode[] => {
  const shown: ReactNode[] = []
  const flow = parts.filter((part): part is string | Blanks<T> => !isBeside(part) && part !== '')
  flow.forEach((part, index) => {
    if (typeof part === 'string') {
      const before = flow[index - 1]
      const isClosed = before !== undefined && typeof before !== 'string' && (isShort(before) || part.trim() === '.')
      shown.push(isClosed ? part.replace(CLOSING, '') : part)
      return
    }
    const after = flow[index + 1]
    const close = typeof after === 'string' && isShort(part) ? (CLOSING.exec(after)?.[0] ?? '') : ''
    shown.push(
      <span key={part.at} className={close ? css.together : undefined}>
        {blank(part)}
        {close}
      </span>,
    )
  })
  return shown
}

const isShort = <T,>(part: Blanks<T>): boolean => {
  if (part.kind === 'text') return (part.text || (part.empty ?? '')).length <= SHORT && !part.long
  return (part.options.find(([value]) => value === part.value)?.[1] ?? '').length <= SHORT
}

interface BlankProps<T> {
  readonly part: Blanks<T>
  readonly of: string | undefined
  readonly make: (said: Said<T>) => string | null
  readonly tell: (said: Said<T>) => void
}

function Blank<T>({ part, of, make, tell }: BlankProps<T>) {
  return part.kind === 'text' ? (
    <WordText
      label={part.label}
      field={of === undefined ? undefined : `${of}.${part.at}`}
      text={part.text}
      empty={part.empty}
      long={part.long}
      onWrite={(text) => make(part.write(text))}
    />
  ) : (
    <WordChoice label={part.label} value={part.value} options={part.options} onChoose={(value) => tell(part.choose(value))} />
  )
}

function Beside<T>({ part, tell }: { readonly part: Note | Press<T>; readonly tell: (said: Said<T>) => void }) {
  if (part.kind === 'press')
    return (
      <button type="button" className={css.press} aria-label={part.label} onClick={() => tell(part.press())}>
        {part.words}
      </button>
    )
  return (
    <p className={part.tone === 'amiss' ? css.amiss : css.means}>
      {part.words}
      {part.link ? (
        <>
          {' '}
          <Link href={part.link.href}>{part.link.words}</Link>
        </>
      ) : null}
    </p>
  )
}
