import { describe, expect, test } from 'vitest'
import { acceptAs } from '#app/_bring/accept.ts'
import { saysOf } from '#app/_words/offer-steps.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { Offer, stateOf } from '#lib/domain/offer.ts'
import {
  acceptOffer,
  changeOffer,
  declineOffer,
  makeOffer,
  standByOffer,
  takeBackAcceptance,
  withdrawOffer,
} from '#lib/plan/commands/offer.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { inReadingOrder } from '#lib/plan/reading-order.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { become } from '#lib/potluck/become.ts'
import { earlierHours, hoursLack, hoursOf } from '#lib/potluck/hours.ts'
import { ideaFor, ideaForNeeds } from '#lib/potluck/idea.ts'
import { type Known, type Missing, missingOf } from '#lib/potluck/missing.ts'
import { AS_OFFERED, formOf, type Variant, variantsOf } from '#lib/potluck/variant.ts'
import { changedLeaves, schemaLeaves } from '#tests/support/schema-leaves.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'
import { idMaker, offer, potluck, whole } from './offered.ts'

const madeOf = (of: Evening, one: Offer, variant: Variant = AS_OFFERED) =>
  become(of, one, variant, { newId: idMaker(), says: saysOf(of, one, formOf(one, variant), variant) })

describe('an offer', () => {
  test('BR2 is written into a plan and read again as it was, and a plan without any has no list of them', () => {
    const of = potluck(whole, offer({ id: 'offer-2', kind: 'thing', name: 'Chairs', thing: 'chairs', portions: 4 }))
    expect(readPlan(planOf({ ...of, house: { chairs: 4, ice: 0 } })).evening).toEqual({
      ...inReadingOrder(of),
      house: { chairs: 4, ice: 0 },
    })
    expect(Object.keys(readPlan(planOf(potluck())).evening)).not.toContain('offers')
  })

  test('BR2 loses what it names and is not there, and goes with its cook; food whose dish was removed is open again', () => {
    const of = potluck(whole)
    const doc = planOf(of)
    expect(acceptAs(doc, of, whole, AS_OFFERED, idMaker())).toMatchObject({ ok: true })
    const dish = readPlan(doc).evening.offers?.[0]?.dish ?? ''
    remove(doc, 'dishes', dish)
    remove(doc, 'kitchens', 'flat')
    remove(doc, 'courses', 'main')
    const { evening: after, reports } = readPlan(doc)
    expect(after.offers?.[0]).toMatchObject({ id: whole.id, state: 'offered' })
    expect(Object.keys(after.offers?.[0] ?? {})).not.toContain('course')
    expect(Object.keys(after.offers?.[0] ?? {})).not.toContain('kitchen')
    expect([reports, checkEvening(after)]).toEqual([[], []])
    remove(doc, 'cooks', 'noor')
    expect(readPlan(doc).evening.offers).toBeUndefined()
  })

  test('BR3 every field of it comes through acceptance into dish, steps or chore', () => {
    const of = potluck(whole)
    const before = madeOf(of, whole)
    const others: readonly Offer[] = [
      { ...whole, name: 'Leek tart' },
      { ...whole, course: 'sweet' },
      { ...whole, kitchen: 'home' },
      { ...whole, portions: 4 },
      { ...whole, suits: ['nuts'] },
      { ...whole, arrives: 'to-finish' },
      { ...whole, how: 'frozen' },
      { ...whole, box: { name: 'a crate', most: 'PT1H' } },
      { ...whole, box: { name: 'a cool box', most: 'PT50M' } },
      { ...whole, atHost: { ...whole.atHost, shelves: 2 } },
      { ...whole, atHost: { ...whole.atHost, lowC: 165 } },
      { ...whole, atHost: { ...whole.atHost, highC: 195 } },
      { ...whole, atHost: { ...whole.atHost, ring: 'small' } },
      ...(['least', 'likely', 'most'] as const).flatMap((edge): Offer[] => {
        const longer = edge === 'least' ? 'PT11M' : edge === 'likely' ? 'PT16M' : 'PT31M'
        return (['heat', 'finish'] as const)
          .map((part): Offer => ({ ...whole, atHost: { ...whole.atHost, [part]: { ...whole.atHost?.[part], [edge]: longer } } }))
          .concat({
            ...whole,
            home: { least: 'PT30M', likely: 'PT40M', most: 'PT50M', [edge]: edge === 'most' ? 'PT55M' : 'PT35M' },
          })
      }),
      { ...whole, atHost: { ...whole.atHost, cold: 3 } },
      { ...whole, atHost: { ...whole.atHost, tools: ['sieve'] } },
      { ...whole, vessel: { name: 'a red tin', goesHome: true } },
      { ...whole, vessel: { name: 'a blue tin', goesHome: false } },
      { ...whole, cook: 'kim' },
    ]
    const seen = new Set(
      others.flatMap((other) => {
        expect(Offer.parse(other)).toEqual(other)
        const changed = changedLeaves(whole, other)
        expect(JSON.stringify(madeOf(of, other)), changed.join()).not.toBe(JSON.stringify(before))
        return changed
      }),
    )
    // Its place in the list, what it is and how it stands are not of the food; a thing is counted and becomes no dish.
    const beside = ['id', 'order', 'kind', 'thing', 'state', 'withdrawn', 'why', 'dish']
    const leaves = schemaLeaves(Offer).filter((leaf) => !beside.includes(leaf))
    expect(leaves.length).toBeGreaterThan(25)
    expect(leaves.filter((leaf) => !seen.has(leaf) && !seen.has(`${leaf}[]`) && !seen.has(leaf.replace(/\[\]$/, '')))).toEqual([])
  })

  test('BR4 becomes a dish in one edit that one undo takes back; a thing becomes none, and nothing is accepted twice', () => {
    const chairs = offer({ id: 'chairs', kind: 'thing', name: 'Chairs', thing: 'chairs', portions: 4 })
    const of = potluck(whole, chairs)
    const doc = planOf(of)
    const undo = openUndo(doc)
    const before = readPlan(doc).evening
    const newId = idMaker()
    expect(undo.edit((d) => acceptAs(d, of, whole, AS_OFFERED, newId))).toMatchObject({ ok: true })
    expect(undo.edit((d) => acceptAs(d, of, chairs, AS_OFFERED, newId))).toEqual({ ok: true, value: null })
    const after = readPlan(doc)
    expect([after.reports, checkEvening(after.evening)]).toEqual([[], []])
    expect(after.evening.offers?.map(stateOf)).toEqual(['accepted', 'accepted'])
    expect(after.evening.steps.filter(({ role }) => role === 'carry' || role === 'chore')).toHaveLength(2)
    for (const again of [whole, chairs]) {
      expect(acceptAs(doc, after.evening, again, AS_OFFERED, newId)).toMatchObject({ ok: false })
      expect(declineOffer(doc, again.id)).toMatchObject({ ok: false })
    }
    expect(changeOffer(doc, whole.id, { portions: 3 })).toMatchObject({ ok: false })
    expect(readPlan(doc).evening).toEqual(after.evening)
    undo.undo()
    undo.undo()
    expect(readPlan(doc).evening).toEqual(before)
    undo.redo()
    expect(takeBackAcceptance(doc, whole.id)).toMatchObject({ ok: true })
    const { dishes, steps, offers } = readPlan(doc).evening
    expect(offers).toEqual(before.offers)
    expect([dishes, steps].map((list) => list.map(({ id }) => id))).toEqual(
      [before.dishes, before.steps].map((list) => list.map(({ id }) => id)),
    )
  })

  test('BR4 in another form is written so, and what is refused changes nothing', () => {
    const hot = offer({ how: 'hot', box: { name: 'a box', most: 'PT45M' } })
    const of = potluck(hot)
    const doc = planOf(of)
    const [newId, before] = [idMaker(), readPlan(doc).evening]
    expect(acceptAs(doc, of, { ...hot, course: 'gone' }, AS_OFFERED, newId)).toMatchObject({ ok: false })
    const taken = become(of, hot, AS_OFFERED, { newId: () => 'joint', says: saysOf(of, hot, hot, AS_OFFERED) })
    expect(acceptOffer(doc, hot.id, taken)).toMatchObject({ ok: false })
    expect(readPlan(doc).evening).toEqual(before)
    expect(acceptAs(doc, of, hot, { kind: 'cold' }, newId)).toMatchObject({ ok: true })
    const [after] = readPlan(doc).evening.offers ?? []
    expect(after).toMatchObject({ how: 'cold', arrives: 'to-heat', state: 'accepted', atHost: { shelves: 1, cold: 1 } })
    expect(Object.keys(after ?? {})).not.toContain('box')
  })

  test('BR4 is withdrawn by its cook whatever was said to it, is declined with a reason, and is offered in one’s own name', () => {
    const doc = planOf(potluck(whole))
    const { order: _order, state: _state, ...said } = offer({ id: 'offer-2', name: 'Bread' })
    expect(makeOffer(doc, said)).toEqual({ ok: true, value: 'offer-2' })
    expect(makeOffer(doc, said)).toMatchObject({ ok: false })
    expect(changeOffer(doc, 'offer-2', { portions: 8, box: { name: 'a bag', most: 'PT3H' } })).toMatchObject({ ok: true })
    expect(declineOffer(doc, 'offer-2', 'There is bread')).toMatchObject({ ok: true })
    withdrawOffer(doc, whole.id)
    const states = () => readPlan(doc).evening.offers?.map((one) => [stateOf(one), one.state, one.why, one.portions])
    expect(states()).toEqual([
      ['withdrawn', 'offered', undefined, 6],
      ['declined', 'declined', 'There is bread', 8],
    ])
    standByOffer(doc, whole.id)
    expect(states()?.[0]?.[0]).toBe('offered')
    expect(setFields(doc, 'offers', whole.id, { portions: -1 })).toMatchObject({ ok: false })
  })
})

describe('what nobody brings yet', () => {
  const known: Known = { gaps: [], unknown: 0, iceGrams: 2500 }
  const kinds = (missing: readonly Missing[]) => missing.map(({ kind }) => kind)

  test('BR5 is told by course, against the covers, with the offers that may answer it', () => {
    const bread = offer({ id: 'bread', course: 'start', portions: 6 })
    const of = potluck(bread)
    expect(missingOf(of, known)).toContainEqual(
      expect.objectContaining({ kind: 'dish', course: 'start', want: 6, offers: ['bread'] }),
    )
    const fewer = { ...of, dishes: of.dishes.map((dish) => (dish.id === 'joint' ? { ...dish, portions: 4 } : dish)) }
    expect(missingOf(fewer, known)).toContainEqual(
      expect.objectContaining({ kind: 'portions', course: 'main', have: 4, want: 6 }),
    )
    const answered = { ...fewer, dishes: [...fewer.dishes, { ...fewer.dishes[0], id: 'more', portions: 2 }] } as Evening
    expect(kinds(missingOf(answered, known))).not.toContain('portions')
    const dropped = { ...of, dishes: of.dishes.map((dish) => ({ ...dish, state: 'dropped' as const })) }
    expect(
      missingOf(dropped, known)
        .filter(({ kind }) => kind === 'dish')
        .map((one) => 'course' in one && one.course),
    ).toEqual(['start'])
    // A dish that was accepted and does not come after all feeds nobody, though it is in the plan until a host takes it out.
    const alone = { ...of, dishes: of.dishes.filter(({ course, id }) => course !== 'main' || id === 'joint') }
    const joint = offer({ id: 'brings-joint', course: 'main', dish: 'joint', state: 'accepted' })
    const inMain = (offers: Offer[]) =>
      missingOf({ ...alone, offers }, known).flatMap((one) => ('course' in one && one.course === 'main' ? [one.kind] : []))
    expect(inMain([joint])).toEqual([])
    expect(inMain([{ ...joint, withdrawn: true }])).toEqual(['dish'])
  })

  test('BR5 says a need that no dish is known to be right for, and guests of whom nothing is known; of needs nothing to who is not to know', () => {
    const vegan = offer({ id: 'beans', course: 'main', suits: ['vegan'] })
    const need = { need: 'vegan', grade: 'avoids', guests: 2 } as const
    const gaps = [{ kind: 'nothing-for', course: 'main', needs: [need], open: ['joint'] }]
    const told = missingOf(potluck(vegan), { ...known, gaps, unknown: 3 })
    expect(told).toContainEqual(
      expect.objectContaining({
        kind: 'need',
        course: 'main',
        needs: [need],
        open: ['joint'],
        offers: ['beans'],
        idea: { part: 'beside', heat: 'cold', base: 'pulses' },
      }),
    )
    expect(told).toContainEqual({ kind: 'needs-unknown', guests: 3, offers: [] })
    // Needs that lack the same are told once, and an offer answers them only when it is right for each.
    const sesame = { need: 'sesame', grade: 'severe', guests: 1 } as const
    const both = [{ course: 'main', needs: [need, sesame], open: ['joint'] }]
    const rows = (suits: string[]) =>
      missingOf(potluck({ ...vegan, suits }), { ...known, gaps: both }).flatMap((one) =>
        one.kind === 'need' ? [[one.needs, one.offers]] : [],
      )
    expect(rows(['vegan'])).toEqual([[[need, sesame], []]])
    expect(rows(['vegan', 'sesame'])).toEqual([[[need, sesame], ['beans']]])
    const hidden = kinds(missingOf(potluck(vegan), { gaps: null, unknown: 3, iceGrams: 0 }))
    expect(hidden).not.toContain('need')
    expect(hidden).not.toContain('needs-unknown')
  })

  test('BR5 counts chairs, plates, glasses, cutlery and ice, and tools: what nobody has said is asked, and never taken as there', () => {
    const chairs = offer({ id: 'chairs', kind: 'thing', name: 'Chairs', thing: 'chairs', portions: 2 })
    const of = potluck(chairs)
    const things = (evening: Evening) =>
      missingOf(evening, known).flatMap((one) => ('thing' in one ? [[one.kind, one.thing, one.want, ...one.offers]] : []))
    expect(things(of)).toEqual([
      ['not-said', 'chairs', 6, 'chairs'],
      ['not-said', 'plates', 18],
      ['not-said', 'glasses', 6],
      ['not-said', 'cutlery', 18],
      ['not-said', 'ice', 3],
    ])
    const house = { chairs: 4, plates: 18, glasses: 20, cutlery: 18, ice: 3 }
    expect(missingOf({ ...of, house }, known).filter((one) => 'thing' in one)).toEqual([
      { kind: 'thing', thing: 'chairs', have: 4, want: 6, offers: ['chairs'] },
    ])
    expect(things({ ...of, house, offers: [{ ...chairs, state: 'accepted' }] })).toEqual([])
    expect(things({ ...of, house, offers: [{ ...chairs, state: 'accepted', withdrawn: true }] })).toEqual([
      ['thing', 'chairs', 6],
    ])
    const wanting = {
      ...of,
      steps: of.steps.map((step) =>
        step.id === 'whip'
          ? { ...step, ways: step.ways.map((way) => ({ ...way, uses: [{ kind: 'tool', tool: 'Whisk', count: 1 } as const] })) }
          : step,
      ),
    }
    const tools = (offers: Offer[]) => missingOf({ ...wanting, offers }, known).filter(({ kind }) => kind === 'tool')
    const whisk = offer({ id: 'whisk', kind: 'thing', name: 'whisk ', portions: 1 })
    expect(tools([whisk])).toEqual([{ kind: 'tool', tool: 'Whisk', count: 1, dishes: ['fool'], offers: ['whisk'] }])
    expect(tools([{ ...whisk, state: 'accepted' }])).toEqual([])
  })

  test('BR6 comes with a kind of food and never a dish: cold where the oven is taken, plants for who eats no meat, plain for an allergy', () => {
    const of = potluck()
    const [start, main, sweet] = of.courses
    if (!start || !main || !sweet) throw new Error('too few courses')
    expect(ideaFor(of, start)).toEqual({ part: 'beginning', heat: 'cold', base: 'vegetables' })
    expect(ideaFor(of, main)).toEqual({ part: 'beside', heat: 'cold', base: 'vegetables' })
    expect(ideaFor({ ...of, dishes: [], steps: [] }, main)).toEqual({ part: 'middle', heat: 'either', base: 'anything' })
    expect(ideaFor({ ...of, dishes: [], steps: [] }, sweet)).toMatchObject({ part: 'end', heat: 'cold' })
    const vegan = { need: 'vegan', grade: 'avoids', guests: 1 } as const
    const sesame = { need: 'sesame', grade: 'severe', guests: 1 } as const
    expect(ideaForNeeds(of, main, [vegan])).toMatchObject({ base: 'pulses' })
    expect(ideaForNeeds(of, main, [sesame])).toMatchObject({ base: 'plain' })
    expect(ideaForNeeds(of, main, [vegan, sesame])).toMatchObject({ base: 'plain' })
  })
})

describe('the forms of an offer', () => {
  const kindsOf = (one: Offer) => variantsOf(potluck(one), one).map(({ kind }) => kind)

  test('BR7 are those that make sense for it, as offered first', () => {
    expect(kindsOf(offer())).toEqual(['as-offered', 'earlier', 'earlier'])
    expect(kindsOf(offer({ kitchen: 'home' }))).toEqual(['as-offered'])
    expect(kindsOf(offer({ kind: 'thing' }))).toEqual(['as-offered'])
    expect(kindsOf(offer({ how: 'hot' }))).toEqual(['as-offered', 'cold', 'earlier', 'earlier'])
    expect(kindsOf(offer({ how: 'cold', arrives: 'to-heat' }))).toEqual(['as-offered', 'ring', 'earlier', 'earlier'])
    // Half an hour on a bad day: a box for less keeps nothing hot all the way.
    const boxed = (most: string) => offer({ how: 'cold', arrives: 'to-heat', box: { name: 'a box', most } })
    expect(kindsOf(boxed('PT40M'))).toContain('hot')
    expect(kindsOf(boxed('PT29M'))).not.toContain('hot')
  })

  test('BR7 brought cold it is cooled at home, kept in both fridges and heated through here, each within its safe time', () => {
    const one = offer({ how: 'hot', box: { name: 'a box', most: 'PT45M' } })
    const made = madeOf(potluck(one), one, { kind: 'cold' })
    expect(made?.brought.dish.carry).toEqual({ how: 'cold', most: 'PT1H30M', kind: 'safety' })
    expect(
      made?.brought.steps.map(({ role, until, after }) => [role, until?.coreC, after.map(({ kind, most }) => [kind, most])]),
    ).toEqual([
      ['make', undefined, []],
      ['make', undefined, [['safety', 'PT1H']]],
      ['carry', undefined, [['safety', 'PT30M']]],
      ['finish', undefined, [['quality', 'PT10M']]],
      ['finish', 74, [['safety', 'PT30M']]],
      ['plate', undefined, [['quality', 'PT15M']]],
    ])
    expect(madeOf(potluck(one), one)?.brought.dish.carry).toEqual({ how: 'hot', most: 'PT45M', kind: 'safety' })
  })

  test('BR7 nothing accepted is confirmed for a need, whatever its cook says it suits', () => {
    const one = offer({ suits: ['vegan', 'nuts'] })
    const made = madeOf(potluck(one), one)
    expect(made?.brought.dish.confirmed).toBeUndefined()
    expect(made?.brought.ingredients).toEqual([])
    expect(made?.brought.dish.notes).toContain('vegan and nuts')
  })
})

describe('the hours of who carries', () => {
  test('BR7 lack what is not said, and are filled in so that the worst way ends when the guests are expected', () => {
    const of = potluck(whole)
    const without = (...kitchens: string[]): Evening => ({
      ...of,
      cooks: of.cooks.map((cook) => ({ ...cook, presence: cook.presence.filter(({ kitchen }) => !kitchens.includes(kitchen)) })),
    })
    expect([of, without('flat'), without('home'), { ...of, cooks: [] }].map((each) => hoursLack(each, whole))).toEqual([
      null,
      'home',
      'host',
      'home',
    ])
    const tight = { ...of, kitchens: of.kitchens.map((each) => ({ ...each, toTableMost: 'PT31M' })) }
    expect(hoursLack(tight, whole)).toBe('way')
    const hours = hoursOf(of, whole)
    expect(hours.slice(-2)).toEqual([
      { kitchen: 'flat', from: { day: 0, time: '09:00' }, to: { day: 0, time: '18:30' } },
      { kitchen: 'home', from: { day: 0, time: '19:00' }, to: { day: 1, time: '02:00' } },
    ])
    expect(hoursLack({ ...of, cooks: of.cooks.map((cook) => ({ ...cook, presence: hours })) }, whole)).toBeNull()
    expect(earlierHours(of, whole, 'PT30M', null)?.map(({ from, to }) => [from.time, to.time])).toEqual([
      ['09:00', '18:00'],
      ['18:30', '23:30'],
    ])
    expect(earlierHours(of, whole, 'PT10H', null)).toBeNull()
  })
})
