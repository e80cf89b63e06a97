'use client'

import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { askServer } from '#app/_recipes/ask-server.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Done, GuestCommand } from '#server/guests/command.ts'
import type { GuestTable, TableGuest } from '#server/guests/table.ts'
import { changedGuest, type GuestEdit } from './guest-edit.ts'

/** A change of a guest that the server has not got: under way, or refused with the reason; what was written stands meanwhile. */
export interface Pending {
  readonly guest: string
  readonly edit: GuestEdit
  readonly refused: string | null
}

export type Asked = { readonly ok: true; readonly done: Done } | { readonly ok: false; readonly why: string }

/** The guests as hosts see and change them. They come from the server alone and stand in no storage of the browser. */
export interface Guests {
  readonly table: GuestTable
  /** What could not be read anew; the table is then an older one. */
  readonly stale: string | null
  readonly pending: readonly Pending[]
  /** Does what a host asks; the table is read anew before it resolves. */
  readonly ask: (command: GuestCommand) => Promise<Asked>
  readonly change: (guest: string, edit: GuestEdit) => void
  /** Sends what was refused once more. */
  readonly tryAgain: (guest: string) => void
  readonly takeBack: (guest: string) => void
}

const STALE = 'The guests could not be read anew. What stands here may be older.'

export const useGuests = (eveningId: string, given: GuestTable): Guests => {
  const { onGuests } = usePlan()
  const [read, setRead] = useState(given)
  const [stale, setStale] = useState<string | null>(null)
  const [pending, setPending] = useState<readonly Pending[]>([])
  const path = `/api/evenings/${eveningId}/guests`
  // Answers may overtake one another: an older one does not take the place of a newer.
  const reads = useRef({ asked: 0, shown: 0 })

  const refresh = useCallback(async () => {
    const mine = ++reads.current.asked
    const found = await fetchTable(path)
    if (mine < reads.current.shown) return
    reads.current.shown = mine
    setStale(found ? null : STALE)
    if (found) setRead(found)
  }, [path])

  useEffect(() => onGuests(() => void refresh()), [onGuests, refresh])

  const ask = useCallback(
    async (command: GuestCommand): Promise<Asked> => {
      const answered = await askServer<Done>(path, command)
      await refresh()
      return answered.ok ? { ok: true, done: answered.value } : { ok: false, why: answered.error.message }
    },
    [path, refresh],
  )

  const send = useCallback(
    async (guest: string, edit: GuestEdit) => {
      const mine: Pending = { guest, edit, refused: null }
      setPending((all) => [...all, mine])
      const answered = await ask({ kind: 'set', guest, change: edit })
      setPending((all) =>
        answered.ok
          ? all.filter((each) => each !== mine)
          : all.map((each) => (each === mine ? { ...mine, refused: answered.why } : each)),
      )
    },
    [ask],
  )

  const takeBack = useCallback(
    (guest: string) => setPending((all) => all.filter((each) => each.guest !== guest || each.refused === null)),
    [],
  )

  const tryAgain = useCallback(
    (guest: string) => {
      const refused = pending.filter((each) => each.guest === guest && each.refused !== null)
      takeBack(guest)
      void send(guest, Object.assign({}, ...refused.map(({ edit }) => edit)))
    },
    [pending, send, takeBack],
  )

  const table = useMemo(() => ({ ...read, guests: read.guests.map((guest) => withPending(guest, pending)) }), [read, pending])
  return { table, stale, pending, ask, change: (guest, edit) => void send(guest, edit), tryAgain, takeBack }
}

const withPending = (guest: TableGuest, pending: readonly Pending[]): TableGuest =>
  pending
    .filter((each) => each.guest === guest.id)
    .reduce<TableGuest>(
      (now, { edit }) => ({ ...changedGuest(now, edit), invitation: now.invitation, changedAt: now.changedAt, by: now.by }),
      guest,
    )

const fetchTable = async (path: string): Promise<GuestTable | null> => {
  try {
    const response = await fetch(path, { cache: 'no-store' })
    return response.ok ? ((await response.json()) as GuestTable) : null
  } catch {
    return null
  }
}
