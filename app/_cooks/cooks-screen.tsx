'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { addCook } from '#lib/plan/commands/add.ts'
import { AddMember } from './add-member.tsx'
import { CookWords } from './cook-words.tsx'
import css from './cooks.module.css'
import { KitWords } from './kit-words.tsx'
import type { Member } from './member.ts'
import { MemberLine } from './member-line.tsx'

/** Who cooks and when, who may open this evening, and what the kitchen has. */
export function CooksScreen({ eveningId, members }: { readonly eveningId: string; readonly members: readonly Member[] }) {
  const { evening, me } = usePlan()
  const { tell } = useEdit()
  const isHost = me?.role === 'host'
  const add = () => {
    const presence = evening.cooks[0]?.presence ?? [
      { kitchen: evening.host, from: { day: 0, time: '09:00' }, to: { day: 1, time: '01:00' } },
    ]
    tell((doc) => addCook(doc, { id: newId(), name: 'A new cook', host: false, eats: true, pace: 1, presence: [...presence] }))
  }
  return (
    <main id="main" className={css.main}>
      <Ready />
      <h1>Cooks</h1>
      <section aria-labelledby="cooking">
        <h2 id="cooking">Who cooks</h2>
        <p className={css.quiet}>The running order gives the work to these, within their hours.</p>
        {evening.cooks.length === 0 ? <p className={css.quiet}>Nobody yet, so nothing can be put in order.</p> : null}
        <ul className={css.list}>
          {evening.cooks.map((cook, index) => (
            <CookWords
              key={cook.id}
              cook={cook}
              isFirst={index === 0}
              isLast={index === evening.cooks.length - 1}
              member={members.find((member) => member.cook === cook.id)}
            />
          ))}
        </ul>
        <Button tone="soft" onClick={add}>
          Add a cook
        </Button>
      </section>
      <section aria-labelledby="members">
        <h2 id="members">Who may open this evening</h2>
        <p className={css.quiet}>
          Each of them has an account, and says which of the cooks they are. Removing somebody closes it to them at once.
        </p>
        <ul className={css.list}>
          {members.map((member) => (
            <MemberLine key={member.id} member={member} eveningId={eveningId} members={members} isHost={isHost} />
          ))}
        </ul>
        {isHost ? (
          <AddMember eveningId={eveningId} members={members} />
        ) : (
          <p className={css.quiet}>Only a host can add or remove people.</p>
        )}
      </section>
      {evening.kitchens.map((kitchen) => (
        <KitWords key={kitchen.id} kitchen={kitchen} />
      ))}
    </main>
  )
}
