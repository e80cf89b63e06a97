'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'
import { usePlan } from '#app/_sync/use-plan.ts'
import css from '#app/_ui/bar.module.css'
import { Bar } from '#app/_ui/bar.tsx'
import { mediumDate } from '#app/_words/clock.ts'
import { CompanyLine } from './here.tsx'
import { ClosedNotice, LinkBadge } from './link-badge.tsx'
import { Tools } from './tools.tsx'

/** `wide`: only where there is room; on a phone one gets there from the screen before it. */
const WAYS: readonly { readonly way: string; readonly words: string; readonly wide?: true }[] = [
  { way: 'menu', words: 'Menu' },
  { way: 'drinks', words: 'Drinks', wide: true },
  { way: 'guests', words: 'Guests' },
  { way: 'order', words: 'Running order' },
  { way: 'kitchens', words: 'Cooks & kitchens' },
  { way: 'chores', words: 'Chores', wide: true },
]

/** The bar of an evening: whose it is, where one is and where the others are, whether it is saved, undo and redo. */
export function EveningBar({ eveningId }: { readonly eveningId: string }) {
  const { evening, link } = usePlan()
  const path = usePathname()
  return (
    <>
      <Bar
        evening={{ name: evening.name || 'An evening', about: `${mediumDate(evening.date)}, for ${evening.covers}` }}
        badge={<LinkBadge link={link} />}
        company={<CompanyLine />}
        tools={<Tools />}
      >
        <nav className={css.nav} aria-label="This evening">
          {WAYS.map(({ way, words, wide }) => {
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
      <ClosedNotice link={link} />
    </>
  )
}
