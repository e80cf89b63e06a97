'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { homesLead, leftText, momentsText, thereText } from '#app/_words/bring.ts'
import { listText } from '#app/_words/clock.ts'
import { homeSheetText } from '#app/_words/home-sheet.ts'
import type { Names } from '#app/_words/names.ts'
import { homesOf } from '#lib/potluck/home-sheet.ts'
import css from './bring.module.css'
import { carriersFrom, carriesFrom, sheetOf, wayTold } from './sheet.ts'

/** The homes from which something comes: when each begins and leaves, its sheet, and the same as a message to send. */
export function Homes({ eveningId, names }: { readonly eveningId: string; readonly names: Names }) {
  const { evening, order } = usePlan()
  const planned = order.kind === 'none' ? null : order.order
  const homes = homesOf(evening)
  if (homes.length === 0) return null
  return (
    <section aria-labelledby="homes">
      <h2 id="homes">Home by home</h2>
      <p className={css.quiet}>{homesLead(homes.length)}</p>
      <ul className={css.homes}>
        {homes.map((kitchen) => {
          const sheet = sheetOf(evening, planned, kitchen)
          const name = names.kitchenName(kitchen)
          const { left, there } = wayTold(evening, carriesFrom(evening, kitchen))
          return (
            <li key={kitchen} className={css.homeItem}>
              <h3>
                <Link href={`/evenings/${eveningId}/bring/${kitchen}`}>{name}</Link>
                <small>{listText(carriersFrom(evening, planned, kitchen).map(names.cookName))}</small>
              </h3>
              <p>{there ? thereText(there, evening.zone) : left ? leftText(left, evening.zone) : momentsText(sheet, evening)}</p>
              <Fold title="The message">
                <CopyText label={`For ${name}`} text={homeSheetText(sheet, names, evening)} rows={12} send />
              </Fold>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
