import type { ReactNode } from 'react'
import { Link } from '#app/_ui/link.tsx'
import css from './bar.module.css'
import { Mark } from './mark.tsx'
import { ThemeSwitch } from './theme-switch.tsx'

interface Props {
  /** The evening's name and its date, on an evening's screens. */
  readonly evening?: { readonly name: string; readonly about: string } | undefined
  /** Beside the evening's name: whether what is shown is saved. */
  readonly badge?: ReactNode
  /** Who else is there. */
  readonly company?: ReactNode
  /** Undo and redo. */
  readonly tools?: ReactNode
  readonly children?: ReactNode
}

/** The night above the table: mark, evening, ways. */
export function Bar({ evening, badge, company, tools, children }: Props) {
  return (
    <header className={`${css.bar} ${evening ? css.ofEvening : ''}`}>
      <Link className={css.mark} href="/" aria-label="Tableward: your evenings">
        <Mark />
        <span className={css.name}>Tableward</span>
      </Link>
      {evening ? (
        <div className={css.evening}>
          <b>{evening.name}</b>
          <span>{evening.about}</span>
        </div>
      ) : null}
      {badge}
      {company}
      {children}
      <div className={css.tools}>
        {tools}
        <ThemeSwitch />
      </div>
    </header>
  )
}
