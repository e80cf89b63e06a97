import { expect, test } from 'vitest'
import type { Claim } from '#lib/domain/people.ts'
import { type Asker, type ClaimDecision, decideClaim, type Wish } from '#lib/plan/decide-claim.ts'
import { cook, course, dish, evening, kitchen, step } from '#tests/support/evening-builders.ts'

const HOST: Asker = { role: 'host', cook: 'ann' }
const as = (id: string): Asker => ({ role: 'cook', cook: id })

const decide = (claims: readonly Claim[], asker: Asker, wish: Wish): ClaimDecision =>
  decideClaim(
    evening(
      {
        kitchens: [kitchen('home', [])],
        cooks: ['ann', 'ben', 'cas', 'dee'].map((id) => cook(id, ['home 09:00 23:00'])),
        claims: [...claims],
      },
      course('main', dish('pie', step('plate', 5))),
    ),
    asker,
    wish,
  )

const held = (first: string, ...also: string[]): Claim => ({ target: 'plate', cook: first, ...(also.length > 0 ? { also } : {}) })
const set = (first: string, ...also: string[]): ClaimDecision => ({
  kind: 'set',
  target: 'plate',
  claim: also.length > 0 ? { cook: first, also } : { cook: first },
})
const join = (who: string): Wish => ({ kind: 'join', target: 'plate', cook: who })
const leave = (who: string): Wish => ({ kind: 'leave', target: 'plate', cook: who })

test('U33 a cook joins who has a step, is first where nobody has, and a fourth is told that it is full', () => {
  expect(decide([held('ann')], as('ben'), join('ben'))).toEqual(set('ann', 'ben'))
  expect(decide([held('ann', 'ben')], as('cas'), join('cas'))).toEqual(set('ann', 'ben', 'cas'))
  expect(decide([], as('ben'), join('ben'))).toEqual(set('ben'))
  expect(decide([held('ann', 'ben')], as('ben'), join('ben'))).toEqual({ kind: 'nothing' })
  expect(decide([held('ann', 'ben', 'cas')], as('dee'), join('dee'))).toEqual({ kind: 'refused', why: { kind: 'full' } })
})

test('U33 who has a step lets others in and out; nobody else does for them but a host', () => {
  expect(decide([held('ann')], as('ann'), join('ben'))).toEqual(set('ann', 'ben'))
  expect(decide([held('ben', 'cas')], as('ben'), leave('cas'))).toEqual(set('ben'))
  expect(decide([held('ben', 'cas')], as('cas'), leave('ben'))).toEqual({ kind: 'refused', why: { kind: 'not-yours' } })
  expect(decide([held('ben')], as('dee'), join('cas'))).toEqual({ kind: 'refused', why: { kind: 'not-yours' } })
  expect(decide([held('ben')], HOST, join('cas'))).toEqual(set('ben', 'cas'))
})

test('U33 whoever leaves or hands on, the others keep it; the last one gives it back', () => {
  expect(decide([held('ann', 'ben')], as('ann'), leave('ann'))).toEqual(set('ben'))
  expect(decide([held('ann')], as('ann'), leave('ann'))).toEqual({ kind: 'clear', target: 'plate' })
  expect(decide([held('ann')], as('ben'), leave('ben'))).toEqual({ kind: 'nothing' })
  const toCas: Wish = { kind: 'reassign', target: 'plate', from: 'ann', cook: 'cas' }
  expect(decide([held('ann', 'ben')], as('ann'), toCas)).toEqual(set('cas', 'ben'))
  expect(decide([held('ann', 'cas')], as('ann'), toCas)).toEqual(set('cas'))
})
