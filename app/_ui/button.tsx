import type { ButtonHTMLAttributes, ReactNode } from 'react'
import { Link } from '#app/_ui/link.tsx'
import css from './button.module.css'

type Tone = 'full' | 'soft' | 'now' | 'word' | 'late' | 'quiet'

const tones: Readonly<Record<Tone, string | undefined>> = {
  full: css.full,
  soft: css.soft,
  now: css.now,
  word: css.word,
  late: css.lateWord,
  quiet: css.quietWord,
}

interface Look {
  readonly tone?: Tone
  readonly large?: boolean
}

const classes = ({ tone = 'full', large = false }: Look): string =>
  `${tone === 'word' || tone === 'late' || tone === 'quiet' ? '' : css.btn} ${tones[tone]} ${large ? css.large : ''}`

/** A patch sewn on; `word`, `late` and `quiet` are words that do something. */
export function Button({ tone, large, type = 'button', ...rest }: Look & ButtonHTMLAttributes<HTMLButtonElement>) {
  return <button type={type} className={classes({ tone, large })} {...rest} />
}

export function LinkButton({ tone, large, href, children }: Look & { readonly href: string; readonly children: ReactNode }) {
  return (
    <Link className={classes({ tone, large })} href={href}>
      {children}
    </Link>
  )
}
