import { expect, test } from 'vitest'
import * as Y from 'yjs'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import type { OrderState, Trial } from '#app/_sync/plan.ts'
import { openTrials } from '#app/_sync/trial.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { orderOf, toast } from '#tests/unit/planner/by-hand.ts'

type Answer = Parameters<LocalOrder['tryOut']>[2]

/** The trials of a plan of one step, with a worker whose answers are given by hand. */
const bench = (state: OrderState) => {
  const doc = new Y.Doc()
  writeEvening(doc, toast('e1', 3), { epoch: 'one', minClient: 1 })
  const asked: { readonly evening: Evening; readonly answer: Answer }[] = []
  const local: LocalOrder = {
    hash: (_evening, answer) => answer(null),
    plan: (_evening, _last, answer) => answer(null),
    tryOut: (evening, _last, answer) => void asked.push({ evening, answer }),
    close: () => undefined,
  }
  const now = { state }
  const trials = openTrials(doc, local, () => now.state)
  const answer = (index: number) => {
    const one = asked[index]
    if (!one) throw new Error(`nothing was asked at ${index}`)
    one.answer({ hash: 'h', order: orderOf(one.evening, 'better', index) })
  }
  return { doc, asked, now, trials, answer }
}

const current = (total: number): OrderState => ({ kind: 'current', order: orderOf(toast('e1', 3), 'better', total) })
const step = () => toast('e1', 3).steps[0]?.id ?? ''
const lasting = (minutes: number) => (doc: Y.Doc) => {
  const way = readPlan(doc).evening.steps[0]?.ways[0]
  if (!way) throw new Error('the step has no way')
  setFields(doc, 'steps', step(), { ways: [{ ...way, takes: { least: 'PT1M', likely: `PT${minutes}M`, most: 'PT1H' } }] })
}
const minutesIn = (evening: Evening | undefined) => minutesOf(evening?.steps[0]?.ways[0]?.takes.likely ?? 'PT0S')

test('U25 a trial plans a changed copy, leaves the plan as it is, and gives the shown order beside the other', async () => {
  const { doc, asked, trials, answer } = bench(current(90))
  const before = Y.encodeStateAsUpdate(doc)
  const tried = trials.tryOut(lasting(9))
  expect(asked.map(({ evening }) => minutesIn(evening))).toEqual([9])
  answer(0)
  const trial = await tried
  expect(trial?.before.total).toBe(90)
  expect(trial?.after.total).toBe(0)
  expect(minutesIn(trial?.evening)).toBe(9)
  expect(Y.encodeStateAsUpdate(doc)).toEqual(before)
})

test('U25 each asker’s newest trial is answered, one after the other, and an older one gets nothing', async () => {
  const { asked, trials, answer } = bench(current(90))
  const told: string[] = []
  const note = (name: string) => (trial: Trial | null) => void told.push(`${name} ${minutesIn(trial?.evening)}`)
  const all = [
    trials.tryOut(lasting(4), 'what if').then(note('first')),
    trials.tryOut(lasting(5), 'claim').then(note('claim')),
    trials.tryOut(lasting(6), 'what if').then(note('second')),
    trials.tryOut(lasting(7), 'what if').then(note('third')),
  ]
  expect(asked).toHaveLength(1)
  answer(0)
  expect(asked).toHaveLength(2)
  answer(1)
  answer(2)
  await Promise.all(all)
  expect(told.toSorted()).toEqual(['claim 5', 'first 0', 'second 0', 'third 7'])
  expect(asked.map(({ evening }) => minutesIn(evening))).toEqual([4, 5, 7])
})

test('U25 a trial waits for an order that is the last word on the plan, and then begins from that', async () => {
  const { asked, trials, answer, now } = bench({ kind: 'planning', order: orderOf(toast('e1', 3), 'quick', 1) })
  const tried = trials.tryOut(lasting(9))
  expect(asked).toHaveLength(0)
  now.state = { kind: 'current', order: orderOf(toast('e1', 3), 'quick', 2), more: true }
  trials.look()
  expect(asked).toHaveLength(0)
  now.state = current(3)
  trials.look()
  answer(0)
  expect((await tried)?.before.total).toBe(3)
})

test('U25 where nothing can be planned, or the page is closed, a trial gets nothing; a change that breaks down is told', async () => {
  const { asked, trials, now } = bench(current(90))
  const cannot = trials.tryOut(lasting(9))
  asked[0]?.answer(null)
  expect(await cannot).toBeNull()
  const broken = trials.tryOut(() => {
    throw new Error('a bug')
  })
  await expect(broken).rejects.toThrow('a bug')
  const under = trials.tryOut(lasting(9))
  const waits = trials.tryOut(lasting(8), 'claim')
  trials.close()
  expect([await under, await waits]).toEqual([null, null])
  now.state = { kind: 'failed', order: null, why: 'no luck' }
  expect(await trials.tryOut(lasting(7))).toBeNull()
})

test('U25 a claim in a trial is decided as the server decides it', async () => {
  const { asked, trials } = bench(current(90))
  const [kim] = toast('e1', 3).cooks
  const decisions: string[] = []
  void trials.tryOut((copy) => {
    const wish = { kind: 'claim', target: step(), cook: kim?.id ?? '' } as const
    decisions.push(carryOutClaim(copy, { role: 'cook', cook: 'somebody else' }, wish).kind)
    decisions.push(carryOutClaim(copy, { role: 'cook', cook: kim?.id ?? null }, wish).kind)
  })
  expect(decisions).toEqual(['refused', 'set'])
  expect(asked[0]?.evening.claims).toEqual([{ target: step(), cook: kim?.id }])
  trials.close()
})
