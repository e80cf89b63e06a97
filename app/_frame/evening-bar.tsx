'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useRef } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import css from '#app/_ui/bar.module.css'
import { Bar } from '#app/_ui/bar.tsx'
import { Link } from '#app/_ui/link.tsx'
import { dayOf, mediumDate } from '#app/_words/clock.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { CompanyLine } from './here.tsx'
import { ClosedNotice, LinkBadge } from './link-badge.tsx'
import { Tools } from './tools.tsx'

interface Way {
  readonly way: string
  readonly words: string
  /** Only where there is room; on a phone one gets there from the screen before it. */
  readonly wide?: true
}

const TONIGHT: Way = { way: 'tonight', words: 'Tonight' }
const BRING: Way = { way: 'bring', words: 'Bring', wide: true }
const WAYS: readonly Way[] = [
  { way: 'menu', words: 'Menu' },
  { way: 'drinks', words: 'Drinks', wide: true },
  { way: 'guests', words: 'Guests' },
  { way: 'order', words: 'Running order' },
  { way: 'kitchens', words: 'Cooks & kitchens' },
  BRING,
  { way: 'shopping', words: 'Shopping', wide: true },
  { way: 'chores', words: 'Chores', wide: true },
]

/** The board comes first from the day before on; earlier it is where there is room for it. */
const waysAt = (day: number): readonly Way[] => (day >= -1 ? [TONIGHT, ...WAYS] : [...WAYS, { ...TONIGHT, wide: true }])

/** Where food comes from several homes, who brings what is asked for on phones too, and first. */
const waysFor = (evening: Evening, day: number): readonly Way[] =>
  evening.kitchens.length < 2 && evening.offers === undefined
    ? waysAt(day)
    : waysAt(day).flatMap((way) =>
        way === BRING ? [] : way.way === 'menu' ? [way, { way: BRING.way, words: BRING.words }] : [way],
      )

/** The bar of an evening: whose it is, where one is and where the others are, whether it is saved, undo and redo. */
export function EveningBar({ eveningId }: { readonly eveningId: string }) {
  const { evening, link, waitingTells, now } = usePlan()
  const path = usePathname()
  const nav = useRef<HTMLElement>(null)
  // On a phone the row of screens may be longer than the phone is wide: the one that one is on is seen whole.
  useEffect(() => {
    const row = nav.current
    const here = path === '' ? null : row?.querySelector('[aria-current]')
    if (!row || !here) return
    // Asked once it is laid out: asking before would have the whole page laid out on the spot.
    const observer = new IntersectionObserver(
      ([seen]) => {
        observer.disconnect()
        if (!seen?.rootBounds) return
        const beyond = seen.boundingClientRect.right - seen.rootBounds.right
        if (beyond > 0) row.scrollLeft += beyond
      },
      { root: row },
    )
    observer.observe(here)
    return () => observer.disconnect()
  }, [path])
  return (
    <>
      <Bar
        evening={{ name: evening.name || 'An evening', about: `${mediumDate(evening.date)}, for ${evening.covers}` }}
        badge={<LinkBadge link={link} waiting={waitingTells} />}
        company={<CompanyLine />}
        tools={<Tools />}
      >
        <nav ref={nav} className={css.nav} aria-label="This evening">
          {waysFor(evening, dayOf(evening, now())).map(({ way, words, wide }) => {
            const href = `/evenings/${eveningId}/${way}`
            const isHere = path === href ? 'page' : path.startsWith(`${href}/`) ? 'within' : null
            return (
              <Link
                key={way}
                href={href}
                className={wide ? css.wide : undefined}
                aria-current={isHere === 'page' ? 'page' : isHere ? true : undefined}
              >
                {words}
              </Link>
            )
          })}
        </nav>
      </Bar>
      <ClosedNotice link={link} evening={evening} />
    </>
  )
}
