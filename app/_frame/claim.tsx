'use client'

import { useParams } from 'next/navigation'
import { type PointerEvent, useEffect, useMemo, useRef } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { heldText, priceText } from '#app/_words/claimed.ts'
import { listText } from '#app/_words/clock.ts'
import { type Names, namesOf } from '#app/_words/names.ts'
import type { Claim } from '#lib/domain/people.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { mostHands } from '#lib/sharing/same-order.ts'
import css from './claim.module.css'
import { ClaimOthers } from './claim-others.tsx'
import { sameWish, useClaim } from './use-claim.ts'

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

/** Resting on a button for so long asks for its price. */
const REST_MS = 350

/**
 * Who has a course, a dish or a step, and taking, returning and giving it. What it would make worse is said before it is
 * asked for, and may be asked for all the same. The server decides; until it has, it says "asking".
 */
export function ClaimLine({ target, name, giving = false, brief = false }: Props) {
  const { evening, me } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  const { phase, worse, dear, refused, ask, look } = useClaim(target)
  const rest = useRest()
  const eveningId = String(useParams().id ?? evening.id)
  const claim = evening.claims.find((candidate) => candidate.target === target)
  const mine = me?.cook ?? null
  const own = ownWish(claim, target, mine, mostHands(evening, target))

  return (
    <span className={css.claim}>
      <span role="status">
        {phase === 'asking' ? (
          <em>asking…</em>
        ) : phase === 'looking' ? (
          <em>seeing what it costs…</em>
        ) : (
          <Who claim={claim} mine={mine} names={names} brief={brief} />
        )}
        {worse.length > 0 ? <span className={css.price}>{priceText(worse)}</span> : null}
      </span>
      {own && phase !== 'asking' ? (
        <Button
          tone="word"
          aria-disabled={phase !== 'idle'}
          onClick={() => ask(own)}
          onFocus={() => rest.begin(() => look(own))}
          onBlur={rest.end}
          onPointerEnter={(event: PointerEvent) => (event.pointerType === 'mouse' ? rest.begin(() => look(own)) : undefined)}
          onPointerLeave={rest.end}
          aria-label={ownName(own, name, claim, names, sameWish(own, dear))}
        >
          {ownWords(own, claim, names, sameWish(own, dear))}
        </Button>
      ) : null}
      {mine === null && giving && me !== null ? (
        <Link href={`/evenings/${eveningId}/kitchens`}>Say which cook you are</Link>
      ) : null}
      {giving && phase !== 'asking' ? <ClaimOthers target={target} name={name} claim={claim} dear={dear} onAsk={ask} /> : null}
      {refused ? (
        <span className={css.refused} role="alert">
          {refused}
        </span>
      ) : null}
    </span>
  )
}

const ownWish = (claim: Claim | undefined, target: string, mine: string | null, seats: number): Wish | null => {
  if (mine === null) return null
  if (claim === undefined) return { kind: 'claim', target, cook: mine }
  const team = [claim.cook, ...(claim.also ?? [])]
  if (team.includes(mine)) return { kind: team.length > 1 ? 'leave' : 'release', target, cook: mine }
  return team.length < seats ? { kind: 'join', target, cook: mine } : null
}

const othersText = (claim: Claim | undefined, mine: string, names: Names): string =>
  listText([...(claim ? [claim.cook] : []), ...(claim?.also ?? [])].filter((cook) => cook !== mine).map(names.cookName))

const ownWords = ({ kind, cook }: Wish, claim: Claim | undefined, names: Names, isDear: boolean): string => {
  if (kind === 'leave') return `leave it to ${othersText(claim, cook, names)}`
  if (kind === 'release') return 'give back'
  return `${kind === 'join' ? 'I’ll help' : 'I’ll do this'}${isDear ? ' all the same' : ''}`
}

const ownName = (wish: Wish, name: string, claim: Claim | undefined, names: Names, isDear: boolean): string => {
  if (wish.kind === 'leave') return `Leave ${name} to ${othersText(claim, wish.cook, names)}`
  return wish.kind === 'release' ? `Give back ${name}` : `${ownWords(wish, claim, names, isDear)}: ${name}`
}

interface WhoProps {
  readonly claim: Claim | undefined
  readonly mine: string | null
  readonly names: Names
  readonly brief: boolean
}

function Who({ claim, mine, names, brief }: WhoProps) {
  if (claim === undefined) return brief ? null : <span className={css.nobody}>nobody yet</span>
  return <>{heldText(claim, mine, names)}</>
}

/** Does something after one has rested on a thing for a moment, and not when one only passes over it. */
const useRest = () => {
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const end = () => clearTimeout(timer.current)
  useEffect(() => () => clearTimeout(timer.current), [])
  const begin = (then: () => void) => {
    end()
    timer.current = setTimeout(then, REST_MS)
  }
  return { begin, end }
}
