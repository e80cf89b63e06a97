'use client'

import Link from 'next/link'
import { useParams } from 'next/navigation'
import { useState } from 'react'
import type { Wanted } from '#app/_sync/plan.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { refusalText } from '#app/_words/link.ts'
import { type Names, namesOf } from '#app/_words/names.ts'
import css from './claim.module.css'

interface Props {
  /** A course, a dish or a step. */
  readonly target: string
  /** What it is called, for the buttons' names. */
  readonly name: string
  /** Whether it may be handed on from here as well. */
  readonly giving?: boolean
  /** Says nothing while nobody has it: where "nobody yet" would be on every line. */
  readonly brief?: boolean
}

/** So many names stand in the line; more are folded behind one word. */
const FEW = 2

/** Who has a course, a dish or a step, and taking, returning and giving it. The server decides; until it has, it says "asking". */
export function ClaimLine({ target, name, giving = false, brief = false }: Props) {
  const plan = usePlan()
  const { evening, me, asking } = plan
  const names = namesOf(evening)
  const [refused, setRefused] = useState<string | null>(null)
  const [listing, setListing] = useState(false)
  const [waiting, setWaiting] = useState(false)
  const eveningId = String(useParams().id ?? evening.id)
  const claim = evening.claims.find((candidate) => candidate.target === target)
  const mine = me?.cook ?? null
  const isAsking = waiting || asking.has(target)

  const ask = async (command: Wanted) => {
    setRefused(null)
    setWaiting(true)
    const outcome = await plan.send(command)
    setWaiting(false)
    setRefused(outcome.kind === 'refused' ? refusalText(outcome.why, names) : null)
  }
  const give = (cook: string) => {
    setListing(false)
    return ask(claim ? { kind: 'reassign', target, from: claim.cook, cook } : { kind: 'claim', target, cook })
  }
  const others = evening.cooks.filter((cook) => cook.id !== claim?.cook && (claim !== undefined || cook.id !== mine))
  const mayGive = giving && (me?.role === 'host' || (claim !== undefined && claim.cook === mine))

  return (
    <span className={css.claim}>
      <span role="status">
        {isAsking ? <em>asking…</em> : <Who cook={claim?.cook} mine={mine} names={names} brief={brief} />}
      </span>
      {isAsking ? null : claim === undefined && mine !== null ? (
        <Button tone="word" onClick={() => ask({ kind: 'claim', target, cook: mine })} aria-label={`I’ll do this: ${name}`}>
          I’ll do this
        </Button>
      ) : claim !== undefined && claim.cook === mine ? (
        <Button tone="word" onClick={() => ask({ kind: 'release', target, cook: claim.cook })} aria-label={`Give back ${name}`}>
          give back
        </Button>
      ) : null}
      {mine === null && giving && me !== null ? (
        <Link href={`/evenings/${eveningId}/kitchens`}>Say which cook you are</Link>
      ) : null}
      {mayGive && !isAsking && others.length > 0 ? (
        others.length <= FEW || listing ? (
          others.map((cook) => (
            <Button key={cook.id} tone="word" onClick={() => give(cook.id)} aria-label={`Give ${name} to ${cook.name}`}>
              {`${claim ? 'give to' : 'for'} ${cook.name}`}
            </Button>
          ))
        ) : (
          <Button tone="word" onClick={() => setListing(true)} aria-label={`Give ${name} to somebody`}>
            give to…
          </Button>
        )
      ) : null}
      {refused ? (
        <span className={css.refused} role="alert">
          {refused}
        </span>
      ) : null}
    </span>
  )
}

function Who({ cook, mine, names, brief }: { cook: string | undefined; mine: string | null; names: Names; brief: boolean }) {
  if (cook === undefined) return brief ? null : <span className={css.nobody}>nobody yet</span>
  return <>{cook === mine ? 'You have this' : `${names.cookName(cook)} has this`}</>
}
