import type * as Y from 'yjs'
import * as z from 'zod/mini'
import { Use } from '#lib/domain/kitchen.ts'
import { After, Way } from '#lib/domain/menu.ts'
import { fail } from '#lib/domain/result.ts'
import { refusedBy, refusedFor } from './fault.ts'
import { type Edited, setFields } from './set.ts'
import { presentEntry } from './siblings.ts'

/** Replaces one way of doing a step (`index` from 0), or adds one when the index is that of the next. */
export const setWay = (doc: Y.Doc, step: string, index: number, way: Way): Edited =>
  changeWays(doc, step, (ways) => (index === ways.length ? [...ways, way] : ways.with(index, way)), index, 1)

/** Takes one way away; the last one stays. */
export const removeWay = (doc: Y.Doc, step: string, index: number): Edited =>
  changeWays(doc, step, (ways) => ways.toSpliced(index, 1), index, 0)

/** What a way occupies while it runs. */
export const setUses = (doc: Y.Doc, step: string, index: number, uses: readonly Use[]): Edited => {
  const parsed = z.array(Use).safeParse(uses)
  if (!parsed.success) return fail(refusedBy(parsed.error))
  return changeWays(doc, step, (ways) => ways.map((way, at) => (at === index ? { ...way, uses: parsed.data } : way)), index, 0)
}

/** Makes the step wait for another one, in place of any wait for that one it had; the other must be another step. */
export const setLag = (doc: Y.Doc, step: string, lag: After): Edited => {
  const parsed = After.safeParse(lag)
  if (!parsed.success) return fail(refusedBy(parsed.error))
  if (lag.step === step) return fail(refusedFor('after.step', 'a step cannot wait for itself'))
  if (!presentEntry(doc, 'steps', lag.step)) return fail({ kind: 'unknown-entry', root: 'steps', id: lag.step })
  return changeAfter(doc, step, (after) => {
    const at = after.findIndex((one) => one.step === lag.step)
    return at < 0 ? [...after, parsed.data] : after.with(at, parsed.data)
  })
}

/** The step no longer waits for the other one. */
export const removeLag = (doc: Y.Doc, step: string, other: string): Edited =>
  changeAfter(doc, step, (after) => after.filter((one) => one.step !== other))

const changeWays = (doc: Y.Doc, step: string, change: (ways: Way[]) => Way[], index: number, beyond: number): Edited => {
  const found = z.array(Way).safeParse(presentEntry(doc, 'steps', step)?.get('ways'))
  if (!found.success) return fail({ kind: 'unknown-entry', root: 'steps', id: step })
  if (!Number.isInteger(index) || index < 0 || index >= found.data.length + beyond)
    return fail(refusedFor(`ways[${index}]`, 'there is no such way'))
  return setFields(doc, 'steps', step, { ways: change(found.data) })
}

const changeAfter = (doc: Y.Doc, step: string, change: (after: After[]) => After[]): Edited => {
  const found = z.array(After).safeParse(presentEntry(doc, 'steps', step)?.get('after'))
  if (!found.success) return fail({ kind: 'unknown-entry', root: 'steps', id: step })
  return setFields(doc, 'steps', step, { after: change(found.data) })
}
