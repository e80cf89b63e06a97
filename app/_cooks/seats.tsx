'use client'

import { useState, useTransition } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { endSeatLinkAction, type LinkFor, makeSeatLinkAction } from './actions.ts'
import { AddMember } from './add-member.tsx'
import { AskIn } from './ask-in.tsx'
import css from './cooks.module.css'
import { MadeSeat } from './made-seat.tsx'
import type { Member, SeatLinkShown } from './member.ts'
import { MemberLine } from './member-line.tsx'

interface Props {
  readonly eveningId: string
  readonly members: readonly Member[]
  readonly links: readonly SeatLinkShown[]
}

const UNREACHED = 'The server cannot be reached, so nothing was changed. Try again.'

/** Who has a seat, links that wait for somebody, and the ways to let somebody in. */
export function Seats({ eveningId, members, links }: Props) {
  const { me } = usePlan()
  const isHost = me?.role === 'host'
  const [made, setMade] = useState<{ readonly label: string; readonly path: string } | null>(null)
  const [again, setAgain] = useState<Member | null>(null)
  // One's own devices were put out, and this page's connection with them: it is let in again when it is loaded anew.
  const [isCut, setCut] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)
  const [busy, start] = useTransition()
  const make = (asked: LinkFor) =>
    start(async () => {
      try {
        const answer = await makeSeatLinkAction(eveningId, asked)
        setProblem(answer.kind === 'refused' ? answer.message : null)
        if (answer.kind === 'made') {
          setMade(answer)
          setAgain(null)
          setCut(asked.for === 'member' && asked.out && again?.you === true)
        }
      } catch {
        setProblem(UNREACHED)
      }
    })
  const end = (link: SeatLinkShown) =>
    start(async () => setProblem(await endSeatLinkAction(eveningId, link.id).catch(() => UNREACHED)))
  const waiting = links.filter(({ member }) => !members.some(({ id }) => id === member))
  return (
    <section aria-labelledby="members">
      <h2 id="members">Who may open this evening</h2>
      <p className={css.quiet}>
        Whoever cooks needs no account: their link is their seat, on each of their devices. Removing somebody closes it to them at
        once.
      </p>
      <ul className={css.list}>
        {members.map((member) => (
          <MemberLine key={member.id} member={member} eveningId={eveningId} members={members} isHost={isHost} onLink={setAgain} />
        ))}
      </ul>
      {again ? (
        <section className={css.again} aria-label={`A new link for ${again.name}`}>
          <p>
            <b>A new link for {again.you ? 'you' : again.name}.</b> The one before opens nothing any more.
          </p>
          <p className={css.offers}>
            <Button disabled={busy} onClick={() => make({ for: 'member', member: again.id, out: false })}>
              Make it for one more device
            </Button>
            <Button tone="late" disabled={busy} onClick={() => make({ for: 'member', member: again.id, out: true })}>
              {again.you ? 'Make it and sign out my other devices' : 'Make it and sign out every device'}
            </Button>
            <Button tone="word" onClick={() => setAgain(null)}>
              no
            </Button>
          </p>
        </section>
      ) : null}
      {isHost && waiting.length > 0 ? (
        <ul className={css.list} aria-label="Links that nobody has used yet">
          {waiting.map((link) => (
            <li key={link.id} className={css.member}>
              <div>
                <b>{link.label}</b>
                <small>has a link and has not sat down yet</small>
              </div>
              <span />
              <span className={css.out}>
                <Button
                  tone="word"
                  disabled={busy}
                  onClick={() => make(link.cook === null ? { for: 'new', label: link.label } : { for: 'cook', cook: link.cook })}
                  aria-label={`New link for ${link.label}`}
                >
                  New link
                </Button>{' '}
                <Button tone="late" disabled={busy} onClick={() => end(link)} aria-label={`Withdraw the link of ${link.label}`}>
                  Withdraw
                </Button>
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {problem ? (
        <p className={css.problem} role="alert">
          {problem}
        </p>
      ) : null}
      {made ? <MadeSeat key={made.path} made={made} onDone={() => (isCut ? window.location.reload() : setMade(null))} /> : null}
      {isHost ? (
        <>
          <AskIn members={members} asked={waiting.map(({ cook }) => cook)} busy={busy} onAsk={make} />
          <AddMember eveningId={eveningId} members={members} />
        </>
      ) : (
        <p className={css.quiet}>Only a host can add or remove people.</p>
      )}
    </section>
  )
}
