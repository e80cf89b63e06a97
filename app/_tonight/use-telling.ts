'use client'

import { useCallback, useEffect, useRef, useState } from 'react'
import { refusalText } from '#app/_words/link.ts'
import type { Names } from '#app/_words/names.ts'
import type { Say } from '#lib/plan/say.ts'
import type { NightSource } from './night-source.ts'
import type { Last, Night } from './use-night.ts'

/** So long the way back is shown. */
const BACK_MS = 20_000

type Telling = Pick<Night, 'tell' | 'takeBack' | 'last' | 'refused'>

/** What this device tells: the last thing can be taken back for 20 s, and a refusal is said. */
export const useTelling = ({ tell: send, now }: NightSource, names: Names): Telling => {
  const [last, setLast] = useState<Last | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const nameOf = useRef(names)
  useEffect(() => {
    nameOf.current = names
  }, [names])
  useEffect(() => {
    if (!last) return
    const timer = setTimeout(() => setLast((one) => (one?.op === last.op ? null : one)), BACK_MS)
    return () => clearTimeout(timer)
  }, [last])

  const hear = useCallback((told: ReturnType<NightSource['tell']>) => {
    void told.answered.then((outcome) => {
      if (outcome.kind !== 'refused') return
      setRefused(refusalText(outcome.why, nameOf.current))
      setLast((one) => (one?.op === told.op ? null : one))
    })
  }, [])
  const tell = useCallback(
    (say: Say, as?: string) => {
      setRefused(null)
      const told = send(say, as)
      setLast(say.kind === 'take-back' || say.kind === 'alarm' ? null : { op: told.op, say, atMs: now() })
      hear(told)
    },
    [send, now, hear],
  )
  const takeBack = useCallback(() => {
    if (!last) return
    setLast(null)
    hear(send({ kind: 'take-back', of: last.op, said: last.say }))
  }, [last, send, hear])
  return { tell, takeBack, last, refused }
}
