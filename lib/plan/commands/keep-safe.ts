import type * as Y from 'yjs'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import { type After, Dish, type Step } from '#lib/domain/menu.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import { readEntry } from '#lib/plan/read-entry.ts'
import { addStep } from './add.ts'
import { type EditFault, refusedFor } from './fault.ts'
import { type Edited, setFields } from './set.ts'
import { presentEntry } from './siblings.ts'

/** Ids and words that only the caller can give: of the step in the fridge. */
export interface FridgeStep {
  readonly id: string
  readonly does: string
}

const MOST_LAGS = 20
const TOO_MANY = refusedFor('after', 'the step waits for too many others')
/** In the fridge for so long at least, and for a day unless the wait before said how long. */
const LEAST_SECONDS = 1800
const DAY_SECONDS = 86_400

/** Puts a limit of food safety into the plan, where the engine must keep it. One update. */
export const keepSafe = (doc: Y.Doc, fix: SafeFix, fridge: FridgeStep): Edited => {
  switch (fix.kind) {
    case 'limit':
      return limitLag(doc, fix)
    case 'keep':
      return limitKeeping(doc, fix)
    case 'fridge':
      return keepCold(doc, fix, fridge)
  }
}

const stepOf = (doc: Y.Doc, id: string): Result<Step, EditFault> => {
  const map = presentEntry(doc, 'steps', id)
  const reading = map ? readEntry('steps', id, map) : null
  return reading?.kind === 'whole' ? ok(reading.entry) : fail({ kind: 'unknown-entry', root: 'steps', id })
}

const seconds = (duration: string | undefined): number =>
  duration === undefined ? Number.POSITIVE_INFINITY : secondsOf(duration)

/**
 * A wait for the other step that may be longer than the limit, or has none, gets it; a shorter wish stays a wish and the limit stands
 * beside it.
 */
const limitLag = (doc: Y.Doc, { step: id, after, from, minutes }: Extract<SafeFix, { kind: 'limit' }>): Edited => {
  const found = stepOf(doc, id)
  if (!found.ok) return found
  if (!presentEntry(doc, 'steps', after) || after === id) return fail({ kind: 'unknown-entry', root: 'steps', id: after })
  const limit = Math.floor(minutes * 60)
  const most = durationOf(limit)
  const { after: lags } = found.value
  const own = lags.filter((lag) => lag.step === after && lag.from === from)
  if (own.some(({ least }) => secondsOf(least) > limit))
    return fail(refusedFor('after.most', 'must wait longer than the limit: it needs the fridge in between'))
  const longer = own.find((lag) => seconds(lag.most) >= limit)
  const hard: After = { step: after, from, least: longer?.least ?? 'PT0S', most, kind: 'safety' }
  const next = longer ? lags.map((lag) => (lag === longer ? hard : lag)) : [...lags, hard]
  return next.length > MOST_LAGS ? fail(TOO_MANY) : setFields(doc, 'steps', id, { after: next })
}

const limitKeeping = (doc: Y.Doc, { dish: id, minutes }: Extract<SafeFix, { kind: 'keep' }>): Edited => {
  const keeps = Dish.shape.keeps.safeParse(presentEntry(doc, 'dishes', id)?.get('keeps'))
  if (!keeps.success) return fail({ kind: 'unknown-entry', root: 'dishes', id })
  const most = durationOf(Math.min(secondsOf(keeps.data.most), Math.floor(minutes * 60)))
  return setFields(doc, 'dishes', id, { keeps: { ...keeps.data, most, kind: 'safety' } })
}

/** A step in the fridge between two that followed each other: in within the limit, out no longer than it, both for safety. */
const keepCold = (
  doc: Y.Doc,
  { after, before, minutes }: Extract<SafeFix, { kind: 'fridge' }>,
  { id, does }: FridgeStep,
): Edited => {
  const [first, next] = [stepOf(doc, after), stepOf(doc, before)]
  if (!first.ok) return first
  if (!next.ok) return next
  const old = next.value.after.filter((lag) => lag.step === after && lag.from === 'end')
  const others = next.value.after.filter((lag) => !old.includes(lag))
  if (others.length >= MOST_LAGS) return fail(TOO_MANY)
  const least = Math.max(LEAST_SECONDS, ...old.map((lag) => secondsOf(lag.least)))
  const most = Math.max(least, Math.min(...old.map((lag) => seconds(lag.most)), DAY_SECONDS))
  const takes = durationOf(least)
  const out = durationOf(Math.floor(minutes * 60))
  return doc.transact(() => {
    const added = addStep(
      doc,
      {
        id,
        dish: first.value.dish,
        does,
        role: 'make',
        where: 'kitchen',
        ways: [
          {
            care: 'leave',
            cooks: 1,
            takes: { least: takes, likely: takes, most: takes },
            upTo: durationOf(most),
            touches: [
              { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
              { when: 'out', takes: 'PT1M', lateBy: 'PT0S' },
            ],
            uses: [{ kind: 'cold', keep: 'cold', places: 1 }],
          },
        ],
        after: [{ step: after, from: 'end', least: 'PT0S', most: out, kind: 'safety' }],
      },
      { kind: 'after', id: after },
    )
    if (!added.ok) return added
    return setFields(doc, 'steps', before, {
      after: [...others, { step: id, from: 'end', least: 'PT0S', most: out, kind: 'safety' }],
    })
  })
}
