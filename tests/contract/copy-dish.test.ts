import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { printEvening } from '#lib/domain/parse.ts'
import { settledDish } from '#lib/plan/settle-dish.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { listDishes, readDish } from '#server/evenings/copy.ts'
import { importEvening } from '#server/evenings/file.ts'
import { addMember, removeMember } from '#server/evenings/members.ts'
import type { Live } from '#server/live.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

const demo = demoEvening('2027-03-06')

const planted = async () => {
  const [host, cook, removed, stranger] = await Promise.all(['Host', 'Cook', 'Removed', 'Stranger'].map(somebody))
  if (!host || !cook || !removed || !stranger) throw new Error('nobody came')
  const made = await importEvening(host.id, printEvening(demo))
  if (!made.ok) throw new Error(made.error.kind)
  const { eveningId } = made.value
  for (const person of [cook, removed]) {
    const added = await addMember(host.id, eveningId, { email: person.email, role: 'cook', cook: null })
    if (!added.ok) throw new Error(added.error.kind)
    if (person === removed) await removeMember(host.id, eveningId, added.value.memberId)
  }
  return { eveningId, host, cook, removed, stranger }
}

test('Y7 who has a seat may read the dishes of an evening, host and cook alike', async () => {
  const { eveningId, host, cook } = await planted()
  for (const person of [host, cook]) {
    const lines = await listDishes(person.id, eveningId)
    expect(lines.ok && lines.value.map(({ name }) => name).sort()).toEqual(demo.dishes.map(({ name }) => name).sort())
  }
  const [dish] = demo.dishes
  const whole = await readDish(cook.id, eveningId, dish?.id ?? '')
  if (!whole.ok) throw new Error(whole.error.kind)
  expect(whole.value.dish).toEqual(dish)
  expect(whole.value.steps.length).toBeGreaterThan(0)
  expect(whole.value.steps.every((step) => step.dish === dish?.id)).toBe(true)
  expect(whole.value.ingredients.every((ingredient) => ingredient.dish === dish?.id)).toBe(true)
})

test('Y7 a stranger, somebody removed and nobody learn neither a dish nor that there is one', async () => {
  const { eveningId, removed, stranger } = await planted()
  const dish = demo.dishes[0]?.id ?? ''
  const refused = { ok: false, error: { kind: 'not-found' } }
  for (const id of [removed.id, stranger.id, randomUUID(), '']) {
    expect(await listDishes(id, eveningId)).toEqual(refused)
    expect(await readDish(id, eveningId, dish)).toEqual(refused)
  }
})

test('Y7 a seat at one evening opens no other one, and an unknown dish or a forged id is not found', async () => {
  const [mine, theirs] = [await planted(), await planted()]
  const dish = demo.dishes[0]?.id ?? ''
  const refused = { ok: false, error: { kind: 'not-found' } }
  expect(await readDish(mine.host.id, theirs.eveningId, dish)).toEqual(refused)
  expect(await readDish(mine.host.id, mine.eveningId, 'no-such-dish')).toEqual(refused)
  for (const forged of ['../x', "' OR 1=1", 'x'.repeat(5000)]) {
    expect(await listDishes(mine.host.id, forged)).toEqual(refused)
    expect(await readDish(mine.host.id, forged, dish)).toEqual(refused)
  }
  const own = await readDish(mine.host.id, mine.eveningId, dish)
  expect(own.ok && settledDish(own.value, { course: 'main', host: 'home' }, randomUUID)?.brought.dish.kitchen).toBe('home')
})
