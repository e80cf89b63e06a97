'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import type { Cook } from '#lib/domain/kitchen.ts'
import type { Claim } from '#lib/domain/people.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { mostHands } from '#lib/sharing/same-order.ts'
import { sameWish } from './use-claim.ts'

interface Props {
  readonly target: string
  readonly name: string
  readonly claim: Claim | undefined
  /** What was said to cost something, and is granted when asked for again. */
  readonly dear: Wish | null
  readonly onAsk: (wish: Wish) => void
}

/** So many names stand in the line; more are folded behind one word. */
const FEW = 2

/** Giving a thing to another cook, letting somebody help, and taking it back: for who has it and for hosts. */
export function ClaimOthers({ target, name, claim, dear, onAsk }: Props) {
  const { evening, me } = usePlan()
  const mine = me?.cook ?? null
  const isHost = me?.role === 'host'
  if (!isHost && (claim === undefined || claim.cook !== mine)) return null
  const team = claim ? [claim.cook, ...(claim.also ?? [])] : []
  const free = evening.cooks.filter(({ id }) => !team.includes(id))
  const takers = claim ? evening.cooks.filter(({ id }) => id !== claim.cook) : free.filter(({ id }) => id !== mine)
  const give = (cook: string): Wish =>
    claim ? { kind: 'reassign', target, from: claim.cook, cook } : { kind: 'claim', target, cook }
  const join = (cook: string): Wish => ({ kind: 'join', target, cook })
  const wordsOf = (wish: Wish, words: string) => (sameWish(wish, dear) ? `${words} all the same` : words)
  return (
    <>
      <Cooks
        cooks={takers}
        more="give to…"
        moreName={`Give ${name} to somebody`}
        words={(cook) => wordsOf(give(cook.id), `${claim ? 'give to' : 'for'} ${cook.name}`)}
        label={(cook) => wordsOf(give(cook.id), `Give ${name} to ${cook.name}`)}
        onPick={(cook) => onAsk(give(cook.id))}
      />
      {claim && team.length < mostHands(evening, target) ? (
        <Cooks
          cooks={free.filter(({ id }) => id !== mine || claim.cook === mine)}
          more="two of you…"
          moreName={`Let somebody help with ${name}`}
          words={(cook) => wordsOf(join(cook.id), `with ${cook.name}`)}
          label={(cook) => wordsOf(join(cook.id), `Let ${cook.name} help with ${name}`)}
          onPick={(cook) => onAsk(join(cook.id))}
        />
      ) : null}
      {(claim?.also ?? [])
        .filter((cook) => cook !== mine)
        .map((cook) => {
          const who = evening.cooks.find(({ id }) => id === cook)?.name ?? 'somebody'
          return (
            <Button
              key={cook}
              tone="word"
              onClick={() => onAsk({ kind: 'leave', target, cook })}
              aria-label={`Do ${name} without ${who}`}
            >
              without {who}
            </Button>
          )
        })}
      {claim && claim.cook !== mine && isHost ? (
        <Button
          tone="word"
          onClick={() => onAsk({ kind: 'release', target, cook: claim.cook })}
          aria-label={`Let nobody have ${name}`}
        >
          nobody
        </Button>
      ) : null}
    </>
  )
}

interface CooksProps {
  readonly cooks: readonly Cook[]
  readonly more: string
  readonly moreName: string
  readonly words: (cook: Cook) => string
  readonly label: (cook: Cook) => string
  readonly onPick: (cook: Cook) => void
}

function Cooks({ cooks, more, moreName, words, label, onPick }: CooksProps) {
  const [isOpen, setOpen] = useState(false)
  if (cooks.length > FEW && !isOpen)
    return (
      <Button tone="word" aria-expanded={false} aria-label={moreName} onClick={() => setOpen(true)}>
        {more}
      </Button>
    )
  return cooks.map((cook) => (
    <Button key={cook.id} tone="word" aria-label={label(cook)} onClick={() => onPick(cook)}>
      {words(cook)}
    </Button>
  ))
}
