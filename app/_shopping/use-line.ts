'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { type NotePatch, noteLines, tick, untick } from '#lib/plan/commands/shop.ts'
import { amountText } from '#lib/quantities/exact.ts'
import { boughtOf, type Line } from '#lib/shopping/line.ts'

export interface Lines {
  /** Into the basket, or out of it again. */
  readonly turn: (line: Line) => void
  /** Says something of lines; returns what was wrong with it, or null. */
  readonly say: (lines: readonly Line[], patch: NotePatch) => string | null
  /** As `say`; what was wrong is told in the strip. */
  readonly tell: (lines: readonly Line[], patch: NotePatch) => void
}

const targets = (lines: readonly Line[]) =>
  lines.map((line) => ({ key: line.key, id: line.kind === 'own' ? (line.note ?? '') : newId(), own: line.kind === 'own' }))

/** What is done to lines of the list: each is one edit of the shared plan. */
export const useLines = (): Lines => {
  const { me, now } = usePlan()
  const edit = useEdit()
  const turn = (line: Line) => {
    if (line.standing.kind === 'got') {
      edit.tell((doc) => untick(doc, line.key))
      return
    }
    const bought = line.unit === null ? null : boughtOf(line)
    edit.tell((doc) =>
      tick(doc, {
        id: newId(),
        line: line.key,
        at: new Date(now()).toISOString(),
        ...(me?.cook ? { by: me.cook } : {}),
        ...(bought === null ? {} : { of: { n: amountText(bought).n, unit: line.unit ?? '' } }),
      }),
    )
  }
  return {
    turn,
    say: (lines, patch) => edit.change((doc) => noteLines(doc, targets(lines), patch)),
    tell: (lines, patch) => {
      edit.tell((doc) => noteLines(doc, targets(lines), patch))
    },
  }
}
