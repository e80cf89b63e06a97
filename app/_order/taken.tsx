'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { clashKey, clashSubject } from '#app/_words/clash.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import css from './taken.module.css'

/** Something that was done about the order. */
export interface Taken {
  readonly text: string
  /** The clash that it was done about. */
  readonly clash: Clash | null
  /** The order from before. */
  readonly before: RunningOrder | null
  /** Gives what became of it when it is known: a word, or null when all is as before. */
  readonly takeBack: (() => string | null | Promise<string | null>) | null
}

interface Noting {
  readonly taken: Taken | null
  readonly note: (taken: Taken | null) => void
}

const TakenContext = createContext<Noting | null>(null)

/** What was done last. Only below a `TakenProvider`. */
export const useTaken = (): Noting => {
  const noting = useContext(TakenContext)
  if (!noting) throw new Error('useTaken needs a TakenProvider above it')
  return noting
}

/** Keeps what was done last, until this person changes something else: taking back would then take back that. */
export function TakenProvider({ children }: { readonly children: ReactNode }) {
  const { doc } = usePlan()
  const [taken, setTaken] = useState<Taken | null>(null)
  useEffect(() => {
    if (!taken) return
    const onChange = (_update: Uint8Array, _origin: unknown, _doc: unknown, { local }: { readonly local: boolean }) => {
      if (local) setTaken(null)
    }
    doc.on('update', onChange)
    return () => doc.off('update', onChange)
  }, [doc, taken])
  const noting = useMemo(() => ({ taken, note: setTaken }), [taken])
  return <TakenContext value={noting}>{children}</TakenContext>
}

/** Says what was done, what came of it, and offers the way back. */
export function TakenNote() {
  const { evening, order } = usePlan()
  const { taken, note } = useTaken()
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    // Its button has gone with the clash: the next thing to do is here.
    if (taken) place.current?.focus()
  }, [taken])
  const takeBack = useCallback(async () => {
    const said = await taken?.takeBack?.()
    note(said ? { text: said, clash: null, before: null, takeBack: null } : null)
  }, [taken, note])
  const names = namesOf(evening)
  const now = order.kind === 'current' && !order.more && order.order !== taken?.before ? order.order : null
  const clash = taken?.clash ?? null
  const key = clash && clashKey(clash)
  const stays = now?.clashes.some((one) => clashKey(one) === key) ?? false
  return (
    <div role="status">
      {taken ? (
        <div ref={place} tabIndex={-1} className={css.taken}>
          <p>
            {taken.text}
            {clash && now
              ? stays
                ? ` The clash about ${clashSubject(clash, names)} is still there.`
                : ` The clash about ${clashSubject(clash, names)} is gone.`
              : ''}
          </p>
          {taken.takeBack ? (
            <Button tone="word" onClick={() => void takeBack()}>
              Take it back
            </Button>
          ) : null}
          <Button tone="quiet" onClick={() => note(null)}>
            All right
          </Button>
        </div>
      ) : null}
    </div>
  )
}
