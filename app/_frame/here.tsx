'use client'

import { useOthers, usePlan } from '#app/_sync/use-plan.ts'
import { companyName, companyText, hereText } from '#app/_words/company.ts'
import css from './here.module.css'

/** "Noor is here", beside what another cook has open; nothing when nobody has. */
export function Here({ target }: { readonly target: string }) {
  const { evening } = usePlan()
  const others = useOthers().filter(({ at }) => at.includes(target))
  if (others.length === 0) return null
  return (
    <span className={css.here}>
      <Seat />
      {hereText(others.map((other) => companyName(evening, other)))}
    </span>
  )
}

/** Where everybody else is, for the bar; each by themselves, so that a long one is cut and not the rest. */
export function CompanyLine() {
  const { evening } = usePlan()
  const others = useOthers()
  if (others.length === 0) return null
  return (
    <ul className={css.company} aria-label="Who else is here">
      {others.map((other) => (
        <li key={other.who.member}>
          <Seat />
          <span>{companyText(evening, other)}</span>
        </li>
      ))}
    </ul>
  )
}

/** A chair seen from above with somebody on it. */
function Seat() {
  return (
    <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      <path d="M1.500 8.500C1.500 11 10.500 11 10.500 8.500" />
      <circle cx="6" cy="5.400" r="3.200" />
    </svg>
  )
}
