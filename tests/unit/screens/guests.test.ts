import { expect, test } from 'vitest'
import { atTable, coversWanted } from '#app/_guests/at-table.ts'
import { buyChanges } from '#app/_guests/buy-changes.ts'
import { guestChanges, plateChanges } from '#app/_guests/guest-changes.ts'
import { changedGuest, type GuestEdit, newGuest } from '#app/_guests/guest-edit.ts'
import { comingParts, moreParts, needParts } from '#app/_guests/guest-parts.ts'
import { firstWays, takeAll, takeProposal, waysOf } from '#app/_guests/proposals.ts'
import type { Part, Said } from '#app/_ui/parts.ts'
import { Guest } from '#lib/domain/people.ts'
import { readPlan } from '#lib/plan/read.ts'
import { type CourseCoverage, coverage } from '#lib/table/coverage.ts'
import { dishVerdict } from '#lib/table/dish-verdict.ts'
import { fewestChanges } from '#lib/table/fewest-changes.ts'
import { tooFew } from '#lib/table/too-few.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'

const demo = demoEvening('2027-02-20')
const noor: Guest = { ...newGuest('Noor'), id: 'noor', reply: 'yes', needs: [{ need: 'vegetarian', grade: 'avoids' }] }
const withNoor = [...demo.guests, noor]
const platesOf = (covered: readonly CourseCoverage[]) =>
  covered.flatMap(({ course, guests }) => guests.map(({ guest, best }) => ({ course, guest, best })))
const ids = () => {
  let last = 0
  return () => `new-${++last}`
}

test('U40 who comes is counted with the cooks who eat, each once, and suggests the covers only where the answers disagree', () => {
  const table = atTable(demo.guests, demo.cooks)
  expect(table).toMatchObject({ coming: 7, open: 1, portions: 7 })
  expect(coversWanted(table, 8)).toBe(null)
  const nine = atTable([...withNoor.filter(({ id }) => id !== 'hanne'), { ...noor, id: 'ada', name: 'Ada' }], demo.cooks)
  expect(coversWanted(nine, 8)).toBe(9)
  expect(coversWanted(atTable(demo.guests.slice(0, 3), demo.cooks), 8), 'two cooks and three guests').toBe(5)
  expect(coversWanted(atTable([], []), 8), 'nobody is written down: nothing is suggested').toBe(null)
  const salma = { ...noor, id: 'salma-too', name: ' salma ' }
  expect(atTable([salma], demo.cooks).places.map(({ key }) => key)).toEqual(['piet', 'salma-too'])
  expect(atTable([{ ...noor, reply: 'no' }], []).places).toEqual([])
  expect(atTable([{ ...noor, child: true, portion: 0.5 }], demo.cooks).portions).toBe(2.5)
})

const GUESTS: readonly Guest[] = [
  ...withNoor,
  {
    ...noor,
    id: 'kees',
    name: 'Kees',
    child: true,
    portion: 0.5,
    arrives: { day: 0, time: '20:15' },
    needs: [
      { need: 'nuts', grade: 'severe' },
      { need: 'raw-onion', grade: 'dislikes' },
    ],
    drives: true,
    drinks: 'none',
    words: 'Sits near the door',
  },
]
type Blank = Exclude<Part<GuestEdit>, string | { kind: 'note' }>
const blanksOf = (guest: Guest): readonly Blank[] =>
  [...comingParts(guest), ...needParts(guest), ...moreParts(guest)].filter(
    (part): part is Blank => typeof part !== 'string' && part.kind !== 'note',
  )
const made = (said: Said<GuestEdit> | undefined): GuestEdit => {
  if (said?.kind !== 'means') throw new Error('refused')
  return said.value
}

test('U41 what a guest’s sentences say is what they mean: written or chosen again it changes nothing, and what they make is a guest', () => {
  let looked = 0
  for (const guest of GUESTS)
    for (const blank of blanksOf(guest)) {
      looked += 1
      if (blank.kind === 'text')
        expect(changedGuest(guest, made(blank.write(blank.text))), `${guest.name} ${blank.at}`).toEqual(guest)
      if (blank.kind !== 'choice') continue
      expect(changedGuest(guest, made(blank.choose(blank.value))), `${guest.name} ${blank.at}`).toEqual(guest)
      for (const [option] of blank.options)
        expect(Guest.safeParse(changedGuest(guest, made(blank.choose(option)))).success, `${blank.at} ${option}`).toBe(true)
    }
  expect(looked).toBeGreaterThan(60)
})

test('U41 a need is added, graded and taken away, nothing known is not nothing, and a child eats half until somebody says otherwise', () => {
  const blank = (guest: Guest, at: string): Blank => {
    const found = blanksOf(guest).find((each) => each.at === at)
    if (!found) throw new Error(`no blank ${at}`)
    return found
  }
  const choose = (guest: Guest, at: string, value: string): Guest => {
    const found = blank(guest, at)
    return changedGuest(guest, made(found.kind === 'choice' ? found.choose(value) : undefined))
  }
  const write = (guest: Guest, at: string, text: string): Said<GuestEdit> | undefined => {
    const found = blank(guest, at)
    return found.kind === 'text' ? found.write(text) : undefined
  }
  const unknown: Guest = { ...noor, needs: null }
  expect(choose(unknown, 'needs', 'none').needs).toEqual([])
  const sesame = choose(unknown, 'more', 'sesame')
  expect(sesame.needs).toEqual([{ need: 'sesame', grade: 'allergy' }])
  expect(choose(sesame, 'needs.sesame.grade', 'severe').needs).toEqual([{ need: 'sesame', grade: 'severe' }])
  expect(choose(sesame, 'needs.sesame', '').needs).toEqual([])
  expect(changedGuest(sesame, made(write(sesame, 'own', 'Raw onion, no chicory'))).needs).toEqual([
    { need: 'sesame', grade: 'allergy' },
    { need: 'raw-onion', grade: 'avoids' },
    { need: 'chicory', grade: 'avoids' },
  ])
  expect(write(sesame, 'own', '???')?.kind).toBe('wrong')
  expect(choose(noor, 'child', 'child')).toMatchObject({ child: true, portion: 0.5 })
  expect(choose({ ...noor, portion: 2 }, 'child', 'child').portion, 'what was written is kept').toBe(2)
  expect(write(noor, 'portion', 'a lot')?.kind).toBe('wrong')
  expect(write(noor, 'arrives', 'late')?.kind).toBe('wrong')
  expect(changedGuest(noor, made(write(noor, 'arrives', '20.15'))).arrives).toEqual({ day: 0, time: '20:15' })
})

test('U42 what is new of the guests is said, with every plate that stands otherwise and the amounts that one buys', () => {
  expect(guestChanges(demo.guests, demo.guests)).toEqual([])
  expect(guestChanges(demo.guests, withNoor)).toEqual(['Noor is new: comes, vegetarian.'])
  const [greta, ...others] = demo.guests
  if (!greta) throw new Error('no guest')
  const vegan: Guest = { ...greta, needs: [{ need: 'vegan', grade: 'avoids' }] }
  expect(guestChanges(demo.guests, [vegan, ...others])).toEqual(['Greta: vegan; no longer vegetarian.'])
  expect(guestChanges(demo.guests, [{ ...greta, reply: 'no' }, ...others])).toEqual(['Greta: does not come (before: comes).'])
  expect(guestChanges(demo.guests, others)).toEqual(['Greta is off the list.'])

  const before = platesOf(coverage(demo, demo.guests))
  const plates = plateChanges(before, platesOf(coverage(demo, withNoor)))
  expect(plates.map(({ guest }) => guest)).toEqual(['noor', 'noor', 'noor', 'noor'])
  expect(plates.map(({ course }) => course)).toEqual(['welcome', 'starter', 'main', 'pudding'])
  expect(plateChanges(before, before)).toEqual([])
  const greener = plateChanges(before, platesOf(coverage(demo, [vegan, ...others])))
  expect(greener.some(({ course, guest, now }) => course === 'main' && guest === 'greta' && now?.verdict.kind !== 'fits')).toBe(
    true,
  )

  const bought = buyChanges(demo, { ...demo, covers: 9 })
  const of = (food: string) => bought.find((each) => each.food === food)
  expect(of('chicken thighs'), 'sixteen for eight: two each').toMatchObject({ before: '16', after: '18' })
  expect(of('leeks'), '800 g for eight').toMatchObject({ before: '800 g', after: '900 g' })
  expect(of('long-grain white rice')).toMatchObject({ before: '600 g', after: '675 g' })
  expect(of('aubergine'), 'made for two whatever the covers').toBe(undefined)
  expect(of('butter'), 'of four dishes: 40 + 50 + 40 + 90 g').toMatchObject({ before: '220 g', after: '250 g' })
  expect(buyChanges(demo, demo)).toEqual([])
})

test('U43 what is proposed and taken leaves nobody with a plate that surely does not fit, and the dishes of the others as they were', () => {
  const covered = coverage(demo, withNoor)
  const changes = fewestChanges(demo, withNoor)
  const proposals = [
    ...tooFew(demo, covered).map((each) => ({ kind: 'portions', ...each }) as const),
    ...firstWays(demo, changes),
  ]
  expect(proposals.map(({ kind }) => kind)).toEqual(['portions', 'for-all'])
  const doc = planOf(demo)
  expect(takeAll(doc, [{ kind: 'covers', covers: 9 }, ...proposals], ids()).ok).toBe(true)
  const { evening } = readPlan(doc)
  expect(evening.covers).toBe(9)
  expect(evening.dishes.find(({ id }) => id === 'aubergine')?.portions).toBe(3)
  expect(evening.ingredients.find(({ id }) => id === 'twists-2')).toMatchObject({
    food: 'a hard cheese made with vegetable rennet',
    checked: 'check-label',
    allergens: [],
    suits: ['vegetarian'],
  })
  for (const { guests } of coverage(evening, withNoor))
    for (const { best } of guests) expect(best?.verdict.kind).not.toBe('does-not')
  expect(tooFew(evening, coverage(evening, withNoor))).toEqual([])
  const untouched = (all: typeof demo) => all.ingredients.filter(({ id }) => id !== 'twists-2')
  expect(untouched(evening)).toEqual(untouched(demo))
})

test('U43 a change for some is a variant from the fork on, with that change alone; what cannot be parted is refused', () => {
  const vegans: readonly Guest[] = [{ ...noor, needs: [{ need: 'vegan', grade: 'avoids' }] }]
  const change = {
    kind: 'swap',
    dish: 'rice',
    ingredient: 'rice-4',
    food: 'olive oil',
    needs: ['vegan'],
    guests: ['noor'],
    fork: 'rice-cook',
    portions: 1,
  } as const
  const [all, some, ...rest] = waysOf(demo, [change], change)
  expect([all?.kind, some?.kind, rest.length]).toEqual(['for-all', 'for-some', 0])
  if (!some) throw new Error('no variant')
  const doc = planOf(demo)
  expect(takeProposal(doc, some, ids())).toEqual({ ok: true, value: null })
  const { evening } = readPlan(doc)
  const variant = evening.dishes.find((dish) => dish.variant?.of === 'rice')
  expect(variant).toMatchObject({ name: 'Rice with bay and butter with olive oil', portions: 1 })
  expect(evening.ingredients.filter(({ dish }) => dish === variant?.id).map(({ food }) => food)).toEqual(['olive oil'])
  expect(evening.ingredients.find(({ id }) => id === 'rice-4')?.food).toBe('butter')
  if (variant) expect(dishVerdict(evening, variant, vegans[0]?.needs ?? null).kind).toBe('fits')
  const early = { kind: 'for-some', dish: 'rice', fork: 'rice-cook', portions: 1, swaps: [] } as const
  const refused = takeProposal(planOf(demo), { ...early, swaps: [{ ingredient: 'rice-1', food: 'barley', needs: [] }] }, ids())
  expect(refused.ok).toBe(false)
})

test('U43 a severe allergy’s guards go into the plan as steps, without the guest’s name', () => {
  const doc = planOf(demo)
  const taken = takeProposal(doc, { kind: 'guard', dish: 'cream', need: 'sesame' }, ids())
  const { evening } = readPlan(doc)
  const guards = evening.steps.filter(({ guard }) => guard?.for === 'sesame')
  expect(guards.map(({ guard }) => guard?.does).toSorted()).toEqual(['begin', 'carry', 'cover', 'plate'])
  expect(taken.ok ? taken.value : null).toBe(guards.find(({ guard }) => guard?.does === 'carry')?.id)
  expect(guards.every(({ does }) => /without sesame/i.test(does))).toBe(true)
})

test('U44 a dish made for some is too few when more cannot have the other one, and only then', () => {
  const few = (guests: readonly Guest[]) => tooFew(demo, coverage(demo, guests))
  expect(few(demo.guests), 'two who eat no meat, made for two').toEqual([])
  expect(few(withNoor)).toEqual([{ dish: 'aubergine', portions: 2, wanted: 3 }])
  expect(few([...demo.guests, { ...noor, reply: 'no' }])).toEqual([])
  expect(few([...demo.guests, { ...noor, needs: [] }]), 'who eats everything has the chicken').toEqual([])
})
