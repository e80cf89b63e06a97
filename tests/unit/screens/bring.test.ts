import { describe, expect, test } from 'vitest'
import { gapsOf } from '#app/_bring/gaps.ts'
import { addHome, homeDayOf } from '#app/_bring/home.ts'
import { homeParts } from '#app/_bring/home-sentence.ts'
import { newDish, newThing, type OfferPatch, patched, withArrives, withHow } from '#app/_bring/offer-edit.ts'
import { offerFor } from '#app/_bring/offer-for.ts'
import { moreParts } from '#app/_bring/offer-more.ts'
import { type OfferScene, offerParts, offerText } from '#app/_bring/offer-sentence.ts'
import type { Part, Parts, Said } from '#app/_ui/parts.ts'
import { missingText } from '#app/_words/missing.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import { Offer } from '#lib/domain/offer.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { readPlan } from '#lib/plan/read.ts'
import { missingOf } from '#lib/potluck/missing.ts'
import { cook, course, dish, evening, HOME_KIT, kitchen, step } from '#tests/support/evening-builders.ts'
import { changedLeaves, schemaLeaves } from '#tests/support/schema-leaves.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'

const dinner = evening(
  {
    kitchens: [kitchen('home', HOME_KIT), kitchen('noors', [], 20)],
    cooks: [cook('kim'), cook('noor', ['noors 10:00 18:00', 'home 18:30 23:30'], { name: 'Noor', host: false }), cook('lou')],
  },
  course('first', dish('soup', step('stir', 10))),
  course('main', dish('pie', step('line', 10))),
)
const scene = (of = dinner): OfferScene => ({
  evening: of,
  names: namesOf(of),
  called: 'What I bring',
  mine: 'noor',
  isHost: true,
})

const heated: Offer = {
  id: 'bake',
  order: 'a0',
  cook: 'noor',
  kind: 'dish',
  name: 'Bake',
  course: 'main',
  kitchen: 'noors',
  portions: 6,
  suits: ['vegan'],
  arrives: 'to-heat',
  how: 'cold',
  box: { name: 'a cool box', most: 'PT2H' },
  atHost: {
    shelves: 1,
    lowC: 150,
    highC: 170,
    ring: 'small',
    heat: { least: 'PT8M', likely: 'PT10M', most: 'PT12M' },
    cold: 3,
    tools: ['grater'],
  },
  vessel: { name: 'a tin', goesHome: true },
  home: { least: 'PT30M', likely: 'PT40M', most: 'PT50M' },
  state: 'offered',
}
const finished: Offer = { ...heated, arrives: 'to-finish', atHost: { finish: { least: 'PT3M', likely: 'PT4M', most: 'PT5M' } } }
const thing: Offer = { ...newThing(dinner, 'noor', 'chairs', 'chairs', 4), name: 'chairs' }
const { thing: _, ...other } = thing

const beef: Ingredient = {
  id: 'beef',
  dish: '',
  order: 'a0',
  food: 'beef',
  amount: { n: '500', unit: 'g' },
  scales: 'yes',
  allergens: [],
  checked: 'known',
  contains: ['meat'],
}

const TRIED = ['7', '25 min', '210 to 220', 'something else', '']
const answers = (part: Part<OfferPatch>): Said<OfferPatch>[] => {
  if (typeof part === 'string' || part.kind === 'note') return []
  if (part.kind === 'press') return [part.press()]
  return part.kind === 'choice' ? part.options.map(([value]) => part.choose(value)) : TRIED.map((text) => part.write(text))
}
const all = (offer: Offer): Parts<OfferPatch> => [...offerParts(offer, scene()), ...moreParts(offer, scene())]
/** What answers of the sentence come to, each an offer as the schema takes it. */
const answered = (offer: Offer): Offer[] =>
  all(offer)
    .flatMap(answers)
    .flatMap((said) => (said.kind === 'means' ? [Offer.parse(patched(offer, said.value))] : []))

/** Not said by the sentence: what it is by, how it stands, and which of the two kinds it is. */
const NOT_SAID = ['id', 'order', 'kind', 'state', 'withdrawn', 'why', 'dish']

describe('offering', () => {
  test('BR31 every field of an offer is changed by a blank of its sentence, and what is written is taken by the schema', () => {
    const said = schemaLeaves(Offer).filter((path) => !NOT_SAID.includes(path))
    const changed = new Set(
      [heated, finished, thing, other].flatMap((offer) => answered(offer).flatMap((next) => changedLeaves(offer, next))),
    )
    expect(said.length).toBeGreaterThan(20)
    expect(said.filter((path) => !changed.has(path) && !changed.has(path.replace(/\[\]$/, '[]')))).toEqual([])
  })

  test('BR31 what never was said can be said, and taken out again; each blank has a name of its own', () => {
    const bare = newDish(dinner, 'noor', 'fresh', 'first')
    expect(bare).toMatchObject({ kitchen: 'noors', portions: 4, arrives: 'ready' })
    const said = new Set(answered({ ...bare, name: 'Salad' }).flatMap((next) => Object.keys(next)))
    expect(['box', 'vessel', 'home', 'suits'].filter((field) => !said.has(field))).toEqual([])
    const gone = answered(heated).flatMap((next) => Object.keys(heated).filter((field) => !(field in next)))
    expect(new Set(gone)).toEqual(new Set(['box', 'vessel', 'home', 'kitchen', 'suits']))
    for (const offer of [heated, finished, thing, other]) {
      const labels = all(offer).flatMap((part) => (typeof part === 'string' || part.kind === 'note' ? [] : [part.label]))
      expect(new Set(labels).size).toBe(labels.length)
      expect(labels.filter((label) => !label.startsWith('What I bring: '))).toEqual([])
    }
  })

  test('BR32 another state brings along what it asks of the host’s kitchen, and takes away what it no longer asks', () => {
    const ready = patched(heated, withArrives(heated, 'ready'))
    expect(ready.atHost).toEqual({ cold: 3, tools: ['grater'] })
    expect(patched(ready, withArrives(ready, 'to-heat')).atHost).toMatchObject({ shelves: 1, heat: { likely: 'PT25M' } })
    expect(patched(ready, withArrives(ready, 'to-assemble')).atHost).toMatchObject({ finish: { likely: 'PT10M' } })
    expect(patched(heated, withArrives(heated, 'to-heat')).atHost).toEqual(heated.atHost)
    expect(patched(heated, withHow(heated, 'hot'))).toMatchObject({ how: 'hot', box: { name: 'an insulated bag', most: 'PT2H' } })
    expect(patched(heated, withHow(heated, 'hot')).atHost?.cold).toBeUndefined()
  })

  test('BR31 an offer is read as it was written', () => {
    expect(offerText(heated, scene())).toBe(
      'for 6 to Course main, from Kitchen noors. It comes cold and to be heated. There it takes 10 min in the oven or on a ring, one shelf at 150 to 170°, a small one.',
    )
    expect(offerText(thing, scene())).toBe('from Kitchen noors')
  })
})

describe('a home', () => {
  const at = (time: string, day = 0) => epochMsOf(dinner, { day, time })

  test('BR34 the home of a cook is written down in one edit, with hours there that end when it is time to leave', () => {
    const doc = planOf(dinner)
    const lou = dinner.cooks.find(({ id }) => id === 'lou')
    if (!lou) throw new Error('Lou cooks')
    let updates = 0
    doc.on('update', () => {
      updates += 1
    })
    let ids = 0
    expect(addHome(doc, dinner, lou, 'lous', () => `kit-${++ids}`)).toEqual({ ok: true, value: null })
    expect(updates).toBe(1)
    const { evening: after, reports } = readPlan(doc)
    expect(reports).toEqual([])
    expect(after.kitchens.find(({ id }) => id === 'lous')).toMatchObject({ name: 'lou’s kitchen', toTable: 'PT20M' })
    const now = after.cooks.find(({ id }) => id === 'lou')
    const day = now && homeDayOf(after, now, 'lous')
    if (!day) throw new Error('a day from home')
    // There when the guests come, with the longest way between.
    expect(epochMsOf(after, day.host.from)).toBe(at('19:00'))
    expect(epochMsOf(after, day.home.to)).toBe(at('18:30'))
  })

  test('BR34 the way and the hours of a home are said in a sentence; what overlaps or is no time is refused', () => {
    const noor = dinner.cooks.find(({ id }) => id === 'noor')
    const [, home] = dinner.kitchens
    if (!noor || !home) throw new Error('Noor and a home')
    const parts = homeParts({ evening: dinner, names: namesOf(dinner), cook: noor, kitchen: home })
    const blank = (name: string) => {
      const found = parts.find((part) => typeof part !== 'string' && part.at === name)
      if (typeof found !== 'object' || found.kind !== 'text') throw new Error(`no blank ${name}`)
      return found
    }
    expect(blank('likely').write('soon').kind).toBe('wrong')
    expect(blank('most').write('10 min')).toMatchObject({ value: { patch: { toTable: 'PT20M', toTableMost: 'PT20M' } } })
    expect(blank('likely').write('45')).toMatchObject({ value: { patch: { toTable: 'PT45M', toTableMost: undefined } } })
    expect(blank('home.to').write('17:30')).toMatchObject({
      value: { kind: 'hours', presence: [{ to: { time: '17:30' } }, { from: { time: '18:30' } }] },
    })
    expect(blank('host.from').write('later').kind).toBe('wrong')
  })
})

describe('what is missing', () => {
  test('BR33 each need is looked at by itself; what is not known to be right is a gap, and a dislike is none', () => {
    const needs = [
      { need: 'vegan', grade: 'avoids', guests: 2 },
      { need: 'sesame', grade: 'dislikes', guests: 1 },
    ] as const
    const meat = { ...dinner, ingredients: [{ ...beef, dish: 'pie' }] }
    expect(gapsOf(meat, needs)).toEqual([
      { course: 'first', needs: [needs[0]], open: ['soup'] },
      { course: 'main', needs: [needs[0]], open: [] },
    ])
    expect(gapsOf(meat, [])).toEqual([])
    // Of the soup nobody knows anything, and the pie is meat in some crust: what lacks the same is one gap, what does not is two.
    const sesame = { need: 'sesame', grade: 'severe', guests: 1 } as const
    const crust: Ingredient = { ...beef, id: 'crust', dish: 'pie', food: 'pastry', checked: 'unknown' }
    const pie = { ...meat, ingredients: [...meat.ingredients, crust] }
    const both = gapsOf(pie, [needs[0], sesame])
    expect(both).toEqual([
      { course: 'first', needs: [needs[0], sesame], open: ['soup'] },
      { course: 'main', needs: [needs[0]], open: [] },
      { course: 'main', needs: [sesame], open: ['pie'] },
    ])
    const [soup] = missingOf(pie, { gaps: both, unknown: 0, iceGrams: 0 }).filter(({ kind }) => kind === 'need')
    if (!soup) throw new Error('nothing is missing')
    expect(missingText(soup, namesOf(meat))).toMatch(
      /nothing known to be right for two guests \(vegan\) and one guest \(severe sesame allergy\); .* may be/,
    )
    expect(offerFor(meat, 'noor', soup, 'o1')).toMatchObject({ portions: 3, suits: ['vegan', 'sesame'] })
    expect(offerFor({ ...meat, covers: 2 }, 'noor', soup, 'o1')?.portions).toBe(2)
  })

  test('BR35 what is missing is offered as the kind of food that it is, or by its number', () => {
    const empty = {
      ...dinner,
      dishes: [],
      steps: [],
      covers: 5,
      house: { chairs: 3, plates: 10, glasses: 5, cutlery: 10, ice: 0 },
    }
    const offers = missingOf(empty, { gaps: null, unknown: 0, iceGrams: 1500 }).map((each) =>
      offerFor(empty, 'noor', each, 'fresh'),
    )
    expect(offers).toMatchObject([
      { kind: 'dish', course: 'first', portions: 5, kitchen: 'noors', name: expect.stringContaining('something') },
      { kind: 'dish', course: 'main', portions: 5 },
      { kind: 'thing', thing: 'chairs', portions: 2 },
      { kind: 'thing', thing: 'ice', portions: 2, how: 'frozen' },
    ])
    for (const offer of offers) expect(Offer.safeParse(offer).success).toBe(true)
  })
})
