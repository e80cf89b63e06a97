'use client'

import { useMemo } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { LinkButton } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { momentsOf } from '#app/_words/bring.ts'
import { listText } from '#app/_words/clock.ts'
import { homeBlocks, homeSheetText } from '#app/_words/home-sheet.ts'
import { namesOf } from '#app/_words/names.ts'
import css from './home-screen.module.css'
import { OnTheWay } from './on-the-way.tsx'
import { carriersFrom, sheetOf } from './sheet.ts'

/** All that one home has to know: when to start and leave, what is packed how, where it goes, who goes on with it; and the same to send. */
export function HomeScreen({ eveningId, kitchen }: { readonly eveningId: string; readonly kitchen: string }) {
  const { evening, order } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  const planned = order.kind === 'none' ? null : order.order
  const back = `/evenings/${eveningId}/bring`
  if (kitchen === evening.host || !evening.kitchens.some(({ id }) => id === kitchen))
    return (
      <Plain title="No such home">
        <Ready />
        <p>Nothing is brought from there.</p>
        <LinkButton href={back}>Who brings what</LinkButton>
      </Plain>
    )
  const sheet = sheetOf(evening, planned, kitchen)
  const who = listText(carriersFrom(evening, planned, kitchen).map(names.cookName))
  return (
    <main id="main" className={css.main} data-order={order.kind}>
      <Ready />
      <p className={css.back}>
        <Link href={back}>Who brings what</Link>
      </p>
      <h1>{names.kitchenName(kitchen)}</h1>
      <p className={css.lead}>
        {who === '' ? 'Nobody brings anything from there yet.' : `${who} to ${names.kitchenName(evening.host)}.`}
      </p>
      <dl className={css.moments}>
        {momentsOf(sheet, evening).map(([what, when]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{when}</dd>
          </div>
        ))}
      </dl>
      <OnTheWay kitchen={kitchen} />
      {sheet.items.length > 0 ? (
        <Cloth label="What is brought">
          {homeBlocks(sheet, names, evening).map((block, index) => {
            const item = sheet.items[index]
            return (
              <section key={item?.kind === 'dish' ? item.dish : (item?.offer ?? block.title)} className={css.block}>
                <h2>
                  {item?.kind === 'dish' ? (
                    <Link href={`/evenings/${eveningId}/menu/${item.dish}`}>{block.title}</Link>
                  ) : (
                    block.title
                  )}
                </h2>
                <ul>
                  {block.lines.map(({ part, text }) => (
                    <li key={text} data-part={part}>
                      {text}
                    </li>
                  ))}
                </ul>
              </section>
            )
          })}
        </Cloth>
      ) : null}
      <p className={css.back}>
        <Link href={`/evenings/${eveningId}/print/homes`}>On paper</Link>
      </p>
      <CopyText label="The message" text={homeSheetText(sheet, names, evening)} rows={14} send />
    </main>
  )
}
