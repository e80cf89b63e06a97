import { describe, expect, test } from 'vitest'
import { acceptAs } from '#app/_bring/accept.ts'
import { verdictText } from '#app/_words/fit.ts'
import { homeBlocks, homeSheetText } from '#app/_words/home-sheet.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { planEvening } from '#lib/order/engine.ts'
import { readPlan } from '#lib/plan/read.ts'
import { type Fit, fitOf, newClashes, type Verdict, verdictOf } from '#lib/potluck/fit.ts'
import { homeSheetOf, homesOf } from '#lib/potluck/home-sheet.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import { madeOf } from '#lib/table/made-of.ts'
import { toConfirm } from '#lib/table/to-confirm.ts'
import { faults } from '#tests/support/checked-plan.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'
import { idMaker, offer, potluck, whole } from './offered.ts'

interface Tried {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly fit: Fit
  readonly dish: string
}

/** A quick order, held against the evening; a trial begins from the order of before. */
const planned = (of: Evening, hint?: RunningOrder): RunningOrder => {
  const order = planEvening(of, { budget: { steps: 200, seed: 1 }, quick: true, ...(hint ? { hint } : {}) })
  expect(faults(of, order)).toEqual([])
  return order
}

/** The plan with the offer in that form, its order, which keeps every rule of presence, road, fridge and oven, and what it comes to. */
const tried = (of: Evening, before: RunningOrder, one: Offer, variant: Variant): Tried => {
  const doc = planOf(of)
  const came = acceptAs(doc, of, one, variant, idMaker())
  const { evening, reports } = readPlan(doc)
  expect(reports).toEqual([])
  const dish = came.ok ? (came.value?.dish ?? '') : ''
  const order = planned(evening, before)
  return { evening, order, dish, fit: fitOf(before, order, evening, dish) }
}

const clock = (instant: string | null | undefined): string => instant?.slice(11, 16) ?? '-'
const stepsIn = ({ evening, order, dish }: Tried) =>
  evening.steps
    .filter((step) => step.dish === dish)
    .map((step: Step) => ({ step, cue: order.cues.find((cue) => cue.step === step.id) }))

const base = potluck()
const before = planned(base)
const ice = offer({ id: 'ice', order: 'a1', kind: 'thing', name: 'Ice', thing: 'ice', portions: 3, state: 'accepted' })
const wholePlan = tried(potluck(whole, ice), before, whole, { kind: 'as-offered' })
const told = (one: Offer, ...variants: Variant[]): { verdict: Verdict; text: string } => {
  const of = potluck(one)
  const all = variants.map((variant) => ({ variant, of: tried(of, before, one, variant) }))
  const verdict = verdictOf(all.map(({ variant, of: { fit } }) => ({ variant, fit })))
  return { verdict, text: verdictText(verdict, namesOf(all[0]?.of.evening ?? of), of.zone) }
}

const clashOf = (dish: string): Clash => ({
  kind: 'keeps',
  steps: [],
  dish,
  course: 'main',
  kit: null,
  from: '2026-11-14T19:00:00+00:00',
  to: '2026-11-14T19:05:00+00:00',
  by: 'PT5M',
  ways: [],
})

describe('an offer is tried with the planner', () => {
  test('BR8 what is accepted is planned: made at home, carried by its cook, into the fridge, heated, plated, its vessel given back', () => {
    expect(wholePlan.order.clashes).toEqual([])
    const seen = stepsIn(wholePlan).map(({ step, cue }) => ({
      role: step.role,
      kitchen: cue?.kitchen,
      cooks: cue?.cooks ?? [],
      kit: cue?.kit.map(({ id }) => id).filter((id) => id !== 'worktop') ?? [],
    }))
    expect(seen.map(({ role, kitchen }) => `${role} ${kitchen}`)).toEqual([
      'make flat',
      'make flat',
      'carry flat',
      'finish home',
      'finish home',
      'finish home',
      'plate home',
    ])
    const [make, chill, carry, fridge, heat, finish] = seen
    expect([make?.cooks, carry?.cooks]).toEqual([['noor'], ['noor']])
    expect([chill?.kit, fridge?.kit, finish?.kit]).toEqual([['flat-fridge'], ['fridge'], ['grater']])
    expect(['oven', 'ring-m', 'ring-l']).toContain(heat?.kit[0])
    const times = stepsIn(wholePlan).map(({ cue }) => cue?.start ?? '')
    expect(times).toEqual(times.toSorted())
    const chore = wholePlan.evening.steps.find(({ role }) => role === 'chore')
    const back = wholePlan.order.cues.find(({ step }) => step === chore?.id)
    expect(Date.parse(back?.start ?? '')).toBeGreaterThan(Date.parse(wholePlan.order.courses.at(-1)?.toTable ?? ''))
  })

  test('BR9 fits, and says so', () => {
    expect(told(offer(), { kind: 'as-offered' })).toEqual({ verdict: { kind: 'fits' }, text: 'It fits.' })
  })

  test('BR9 hot food that would wait too long fits if it comes cold', () => {
    const one = offer({ how: 'hot', box: { name: 'a box', most: 'PT45M' } })
    const { verdict, text } = told(one, { kind: 'as-offered' }, { kind: 'cold' })
    expect(verdict).toMatchObject({ kind: 'fits-if', variant: { kind: 'cold' }, because: { kind: 'too-long', most: 'PT45M' } })
    expect(text).toMatch(/^It fits if it comes cold, to be heated here\. Otherwise it may take 45 min from home to the table/)
  })

  test('BR9 the oven is full, from when to when: a ring would do', () => {
    const one = offer({
      course: 'start',
      how: 'cold',
      arrives: 'to-heat',
      atHost: { shelves: 1, lowC: 180, highC: 200, heat: { least: 'PT17M', likely: 'PT18M', most: 'PT19M' } },
    })
    const { verdict, text } = told(one, { kind: 'as-offered' }, { kind: 'ring' })
    const roast = before.cues.find(({ step }) => step === 'roast')
    expect(verdict).toMatchObject({
      kind: 'fits-if',
      variant: { kind: 'ring' },
      because: { kind: 'full', kit: 'oven', from: roast?.start, to: roast?.end },
    })
    expect(text).toBe(
      `It fits if it is to be heated on a ring, not in the oven. Otherwise the oven is full ${clock(roast?.start)}–${clock(roast?.end)}.`,
    )
  })

  test('BR9 says that kit is too small, that hours are too tight, and that no form does', () => {
    const big = told(offer({ how: 'cold', atHost: { cold: 9 } }), { kind: 'as-offered' })
    expect(big.verdict).toMatchObject({ kind: 'does-not', because: { kind: 'lacks', use: { kind: 'cold', places: 9 } } })
    const one = offer()
    const of = potluck(one)
    const far = { ...of, kitchens: of.kitchens.map((each) => (each.id === 'flat' ? { ...each, toTable: 'PT3H' } : each)) }
    const { fit } = tried(far, before, one, { kind: 'as-offered' })
    expect(fit).toEqual({ kind: 'no-hours', cook: 'noor', lacks: 'way' })
    expect(verdictText(verdictOf([{ variant: { kind: 'as-offered' }, fit }]), namesOf(of), of.zone)).toBe(
      'Noor has less time between leaving home and being here than the way takes on a bad day.',
    )
  })

  test('BR9 a clash of before is none of the offer, unless it is worse by more than a minute', () => {
    const worse = (by: string) => ({ ...before, clashes: [{ ...clashOf('joint'), by }] })
    expect(newClashes(worse('PT5M'), worse('PT6M'))).toEqual([])
    expect(newClashes(worse('PT5M'), worse('PT7M'))).toHaveLength(1)
    expect(newClashes(before, worse('PT30S'))).toHaveLength(1)
  })
})

describe('the sheet of a home', () => {
  const plan = wholePlan
  const guests: Evening['guests'] = [
    {
      id: 'guest',
      name: 'Wilhelmina',
      reply: 'yes',
      child: false,
      portion: 1,
      needs: [{ need: 'sesame', grade: 'severe' }],
      drinks: 'unknown',
      drives: false,
      words: 'Kept secret',
    },
  ]
  const guard = (step: Step): Step => ({
    ...step,
    id: 'guarded',
    does: 'Clean everything of sesame',
    guard: { for: 'sesame', does: 'begin' },
    after: [],
  })
  const evening: Evening = {
    ...plan.evening,
    guests,
    steps: plan.evening.steps.flatMap((step) =>
      step.dish === plan.dish && step.role === 'plate' ? [step, guard(step)] : [step],
    ),
  }
  const names = namesOf(evening)
  const sheet = homeSheetOf(evening, plan.order, { kitchen: 'flat', cook: 'noor', toConfirm: new Set([plan.dish]) })

  test('BR10 answers everything: what, how packed, when to start and leave, where to put it, who heats it and when, and what goes home', () => {
    expect(homesOf(evening)).toEqual(['flat'])
    const at = (role: Step['role'], n = 0) => stepsIn(plan).filter(({ step }) => step.role === role)[n]?.cue
    const heat = at('finish', 1)
    const carry = at('carry')
    const text = homeSheetText(sheet, names, evening)
    expect(clock(sheet.start)).toBe(clock(at('make')?.start))
    expect(clock(sheet.way?.leave)).toBe(clock(carry?.start))
    expect(Date.parse(sheet.way?.latest ?? '') - Date.parse(sheet.way?.leave ?? '')).toBe(30 * 60_000)
    expect(Date.parse(sheet.way?.likely ?? '') - Date.parse(sheet.way?.leave ?? '')).toBe(20 * 60_000)
    for (const part of [
      `Start at ${clock(at('make')?.start)}.`,
      `Leave at ${clock(carry?.start)}: there at about ${clock(sheet.way?.likely)}, at ${clock(sheet.way?.latest)} at the latest.`,
      'Onion tart, for six',
      'It travels cold, in a blue tin, in a cool box; no longer than 2 h until it is seen to here.',
      'On arrival put it in the fridge',
      `${clock(heat?.start)} Heat Onion tart, ${names.kitName(heat?.kit[0]?.id ?? '').startsWith('the oven') ? 'in the oven, at 160 to 190°' : 'on the medium ring'}, until it is 74° inside: `,
      'A blue tin goes home again afterwards.',
      'confirm there that you have read the labels and kept it apart',
      'One more step stands in the plan',
      'three kilos of ice',
      'follow your local rules',
    ])
      expect(text).toContain(part)
    expect(text).toMatch(/until it is 74° inside: (?:kim|Noor)\./)
    const lines = homeBlocks(sheet, names, evening)[0]?.lines ?? []
    expect(lines.filter(({ at: moment }) => moment !== null).length).toBeGreaterThan(5)
  })

  test('BR10 holds nothing of guests and their needs, also not what a step of the plan says of them', () => {
    const text = homeSheetText(sheet, names, evening)
    for (const word of ['Wilhelmina', 'sesame', 'secret', 'vegan', 'severe', 'allergy']) {
      expect(text).not.toContain(word)
      expect(JSON.stringify(sheet)).not.toContain(word)
    }
  })

  test('BR10 without an order, and for another cook or home, it says what it can', () => {
    const bare = homeSheetOf(evening, null, { kitchen: 'flat', cook: 'noor' })
    expect([bare.start, bare.way]).toEqual([null, null])
    expect(homeSheetText(bare, names, evening)).toContain('When to leave is not planned yet.')
    expect(homeSheetOf(evening, plan.order, { kitchen: 'flat', cook: 'kim' }).items).toEqual([])
    expect(homeSheetText(homeSheetOf(evening, plan.order, { kitchen: 'home' }), names, evening)).toContain('Nothing to bring.')
    expect(homeSheetOf(evening, plan.order, { kitchen: 'flat' }).items).toHaveLength(2)
  })

  test('BR11 its cook is asked to confirm it until they have, and again when it is made of something else', () => {
    const withDish = (fields: Partial<Evening['dishes'][number]>): Evening => ({
      ...evening,
      dishes: evening.dishes.map((dish) => (dish.id === plan.dish ? { ...dish, ...fields } : dish)),
    })
    const dish = evening.dishes.find(({ id }) => id === plan.dish)
    if (!dish) throw new Error('it became no dish')
    expect(toConfirm(evening)).toEqual(new Set([plan.dish]))
    const confirmed = withDish({ confirmed: { for: ['sesame'], of: madeOf(evening, dish) } })
    expect(toConfirm(confirmed)).toEqual(new Set())
    const flour: Evening['ingredients'][number] = {
      id: 'flour',
      dish: plan.dish,
      order: 'a0',
      food: 'flour',
      amount: null,
      scales: 'yes',
      allergens: [],
      checked: 'unknown',
      contains: [],
    }
    expect(toConfirm({ ...confirmed, ingredients: [flour] })).toEqual(new Set([plan.dish]))
    expect(homeSheetText(homeSheetOf(evening, plan.order, { kitchen: 'flat' }), names, evening)).not.toContain('confirm')
  })
})
