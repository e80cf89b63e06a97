import { describe, expect, test } from 'vitest'
import {
  changeIngredient,
  makeIngredient,
  makeStep,
  openThings,
  setAside,
  settleIngredient,
  settleStep,
  withHeat,
  withItsCare,
  withMinutes,
  withPlace,
  withUpTo,
} from '#app/_recipes/correct.ts'
import { FIRST_START, guessDecimal, hasDecimals, rescueFirst } from '#app/_recipes/first-draft.ts'
import { openKept, type Shelf } from '#app/_recipes/kept.ts'
import { entriesOf, type MenuDraft, menuDraftOf, withRecipes } from '#app/_recipes/menu-draft.ts'
import { readFile } from '#app/_recipes/read-file.ts'
import { namesIn, readTimes } from '#app/_recipes/times.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { planEvening } from '#lib/order/engine.ts'
import type { DishDraft } from '#lib/recipes/draft.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'
import { eveningOf } from '#server/evenings/create.ts'
import { AMERICAN } from '#tests/support/recipes/american.ts'
import type { RecipeCase } from '#tests/support/recipes/case.ts'
import { HELD_OUT } from '#tests/support/recipes/held-out.ts'
import { HOSTILE } from '#tests/support/recipes/hostile.ts'
import { NOTES } from '#tests/support/recipes/notes.ts'
import { NUMBERED } from '#tests/support/recipes/numbered.ts'
import { PAGES } from '#tests/support/recipes/pages.ts'
import { CUPS, THREE_COURSES } from '#tests/support/recipes/three-courses.ts'

const CASES: readonly RecipeCase[] = [...NUMBERED, ...AMERICAN, ...NOTES, ...PAGES, ...HELD_OUT]

const counter = () => {
  let count = 0
  return () => {
    count += 1
    return `n${count}`
  }
}

const drafted = (text: string): MenuDraft => {
  const mark = guessDecimal(text)
  const paste = readPaste(text, mark)
  if (!paste.ok) throw new Error(paste.error.kind)
  return menuDraftOf(paste.value, mark, counter())
}
const firstDish = (text: string): DishDraft => {
  const dish = drafted(text).courses[0]?.dishes[0]
  if (!dish) throw new Error('no dish')
  return dish.draft
}

const TIMES = { name: 'A dinner', date: '2027-03-06', guestsFrom: '19:00', sitDown: '19:30', covers: 6 }

/** The evening that the server would plant. */
const planted = (menu: MenuDraft) => {
  const { assumed: _assumed, ...entries } = entriesOf(menu, { covers: 6, kitchen: 'home', newId: counter() })
  return eveningOf({ ...TIMES, zone: 'Europe/London', cooks: ['Lou'], menu: entries }, 'Kim')
}

describe('from a draft to an evening', () => {
  test.each(CASES)('F2 $name, uncorrected, makes an evening that the schemas take, and is stored as it was', ({ text }) => {
    const menu = drafted(text)
    const parsed = parseEvening(JSON.parse(JSON.stringify(planted(menu))))
    expect(parsed.ok ? [] : parsed.error).toEqual([])
    expect(JSON.parse(JSON.stringify(menu))).toEqual(menu)
    expect(menu.courses.flatMap((course) => course.dishes)).toHaveLength(1)
  })

  test('F2 hostile text makes an evening that the schemas take, or none', () => {
    let made = 0
    for (const text of HOSTILE) {
      const paste = readPaste(text, '.')
      if (!paste.ok) continue
      const parsed = parseEvening(JSON.parse(JSON.stringify(planted(menuDraftOf(paste.value, '.', counter())))))
      expect([text.slice(0, 80), parsed.ok ? [] : parsed.error]).toEqual([text.slice(0, 80), []])
      made += 1
    }
    expect(made).toBeGreaterThan(20)
  })

  test('F6 three courses that were pasted plan without a clash, hot food on the plates within a quarter of an hour', () => {
    const evening = planted(drafted(THREE_COURSES))
    const order = planEvening(evening, { budget: { steps: 4000, seed: 1 } })
    expect(order.clashes.map((clash) => [clash.kind, clash.steps])).toEqual([])
    expect(new Set(order.cues.map((cue) => cue.step))).toEqual(new Set(evening.steps.map((step) => step.id)))
    const cue = (does: RegExp) => {
      const step = evening.steps.find((each) => does.test(each.does))
      const found = order.cues.find((each) => each.step === step?.id)
      if (!found) throw new Error(String(does))
      return found
    }
    const between = Date.parse(cue(/^Plate: roast carrots/).start) - Date.parse(cue(/^Roast or bake/).end)
    expect(between).toBeGreaterThanOrEqual(0)
    expect(between).toBeLessThanOrEqual(15 * 60_000)
  })

  test('F6 tools that a recipe asks for are in the kitchen, and a long method has evenings enough before', () => {
    const evening = planted(
      drafted(
        'Brined pork\nServes 6\n2 kg pork\n1 l brine\n\n1. Chill for 36 hours.\n2. Whisk the glaze with an electric mixer for 5 minutes.',
      ),
    )
    expect(evening.kitchens[0]?.kit).toContainEqual({ id: 'tool-1', kind: 'tool', tool: 'mixer', count: 1 })
    expect(evening.cooks[1]?.presence.map((each) => each.from.day)).toEqual([-2, -1, 0])
  })

  test('F2 what was not understood, assumed or not used stands in the notes of the dish', () => {
    const made = entriesOf(drafted(CUPS), { covers: 6, kitchen: 'home', newId: counter() })
    expect(made.dishes[0]?.notes).toMatch(/Assumed/)
    const bare = entriesOf(drafted(THREE_COURSES), { covers: 6, kitchen: 'home', newId: counter() })
    expect(bare.dishes.find((dish) => dish.name === 'Pork shoulder')?.notes).toMatch(/no recipe yet/)
  })

  test('F2 a recipe that comes later goes to the dish it names, any other is a guess', () => {
    const menu = drafted('Starter: Soup\nMain: Corn pudding\nDessert: Plums')
    const paste = readPaste(CUPS, '.')
    if (!paste.ok) throw new Error(paste.error.kind)
    const named = withRecipes(menu, paste.value.recipes, 'https://kitchen.example/corn', '.', counter())
    expect(named.courses[1]?.dishes).toMatchObject([
      { hasRecipe: true, draft: { name: 'Corn pudding', source: 'https://kitchen.example/corn' } },
    ])
    const other = withRecipes(drafted('Starter: Soup\nMain: Lamb'), paste.value.recipes, null, '.', counter())
    expect(other.courses[1]?.dishes.map((dish) => dish.by)).toEqual(['name', 'recipe'])
  })
})

describe('corrections', () => {
  const pudding = firstDish(CUPS)
  test('F3 the American recipe asks whose its cups are, and flags the stray numbers', () => {
    expect(pudding.asksMeasures).toBe(true)
    expect(pudding.measures).toBeNull()
    expect(pudding.steps.flatMap((step) => step.doubts.map((doubt) => step.text.slice(doubt.from, doubt.to)))).not.toEqual([])
    const made = entriesOf(drafted(CUPS), { covers: 6, kitchen: 'home', newId: counter() })
    expect(made.ingredients[0]?.amount?.unit).toBe('cup')
    const menu = drafted(CUPS)
    const said = {
      ...menu,
      courses: menu.courses.map((course) => ({
        ...course,
        dishes: course.dishes.map((dish) => ({ ...dish, draft: { ...dish.draft, measures: 'us' as const } })),
      })),
    }
    expect(entriesOf(said, { covers: 6, kitchen: 'home', newId: counter() }).ingredients[0]?.amount?.unit).toBe('US cup')
  })

  test('F3 a corrected word is what is made, and what was open about it is open no more', () => {
    const open = openThings(pudding)
    expect(open).toBeGreaterThan(2)
    let draft = pudding
    for (const { key } of draft.ingredients) draft = settleIngredient(draft, key)
    for (const { key } of draft.steps) draft = settleStep(draft, key)
    expect(openThings({ ...draft, measures: 'us' })).toBe(0)
    const key = draft.ingredients[0]?.key ?? ''
    const amended = changeIngredient(draft, key, { amount: { n: '7/2', unit: 'cups' } })
    expect(amended.ingredients[0]?.line).toMatchObject({ amount: { n: '7/2' }, text: '2 cups corn kernels' })
  })

  test('F3 minutes, care, place and heat of a step stay a way that the schemas take, in any order of corrections', () => {
    const menu = drafted(CUPS)
    for (const change of [withItsCare, null])
      for (const care of ['hands-on', 'eye', 'leave'] as const)
        for (const place of ['none', 'worktop', 'large', 'oven', 'cold', 'frozen'] as const) {
          const steps = pudding.steps.map((step) => {
            const placed = withPlace(change ? change(step, care) : step, place)
            const timed = withMinutes(withHeat(placed, 150, 160), 'PT2H')
            const left = timed.way.care === 'leave' ? withUpTo(withUpTo(timed, 'PT10M'), 'PT5H') : timed
            return change ? left : withItsCare(left, care)
          })
          const corrected = {
            ...menu,
            courses: menu.courses.map((course) => ({
              ...course,
              dishes: course.dishes.map((dish) => ({ ...dish, draft: { ...dish.draft, steps } })),
            })),
          }
          const parsed = parseEvening(JSON.parse(JSON.stringify(planted(corrected))))
          expect([care, place, parsed.ok ? [] : parsed.error]).toEqual([care, place, []])
        }
  })

  test('F3 a line can be moved between ingredients, steps and what is not used, and no word of it is lost', () => {
    const key = pudding.ingredients[6]?.key ?? ''
    const text = pudding.ingredients[6]?.line.text
    const aside = setAside(pudding, key)
    expect(aside.unused).toContainEqual({ key, text, why: 'set-aside' })
    const step = makeStep(aside, key, counter())
    expect(step.steps.at(-1)?.text.toLowerCase()).toBe(text?.toLowerCase())
    expect(step.unused).toEqual(pudding.unused)
    const back = makeIngredient(step, step.steps.at(-1)?.key ?? '', counter())
    expect(back.steps).toHaveLength(pudding.steps.length)
    expect(back.ingredients).toHaveLength(pudding.ingredients.length)
  })
})

describe('what is kept on the device', () => {
  const shelfOf = (over: Partial<Shelf> = {}) => {
    const values = new Map<string, string>()
    const shelf: Shelf = {
      getItem: (key) => values.get(key) ?? null,
      setItem: (key, value) => values.set(key, value),
      removeItem: (key) => values.delete(key),
      ...over,
    }
    return { values, shelf }
  }
  test('F1 a draft is there after a reload, gone once cleared, and of another version its words are rescued', () => {
    const { shelf, values } = shelfOf()
    const menu = drafted(THREE_COURSES)
    const first = openKept(shelf, 'k', 1, FIRST_START, rescueFirst)
    first.set({ ...FIRST_START, paste: THREE_COURSES, menu, isCorrected: true, times: { name: 'Plums' } })
    first.flush()
    expect(openKept(shelf, 'k', 1, FIRST_START, rescueFirst).get()).toEqual(first.get())
    expect(openKept(shelf, 'k', 2, FIRST_START, rescueFirst).get()).toEqual({ ...FIRST_START, paste: THREE_COURSES })
    values.set('k', '{broken')
    expect(openKept(shelf, 'k', 1, FIRST_START, rescueFirst).get()).toEqual(FIRST_START)
    first.clear()
    expect(values.size).toBe(0)
    expect(first.get()).toEqual(FIRST_START)
  })
  test('F1 a device that keeps nothing, or has no room, is told, and nothing on the page is lost by it', () => {
    const full = () => {
      throw new Error('no room')
    }
    const { shelf } = shelfOf({ setItem: full })
    const kept = openKept(shelf, 'k', 1, FIRST_START, rescueFirst)
    let told = 0
    kept.subscribe(() => {
      told += 1
    })
    kept.set({ ...FIRST_START, paste: 'soup' })
    kept.flush()
    expect([kept.isKept(), kept.get().paste, told]).toEqual([false, 'soup', 2])
    expect(openKept(null, 'k', 1, FIRST_START, rescueFirst).isKept()).toBe(false)
  })
})

describe('times and files', () => {
  const draft = {
    name: ' Plums ',
    date: '2027-03-06',
    guestsFrom: '7 pm',
    sitDown: '19.30',
    covers: '6',
    cooks: 'Lou, Noor and Ama',
  }
  test('F7 the times are read as people write them; what is wrong is told by its word', () => {
    expect(readTimes(draft)).toEqual({ ok: true, value: { ...TIMES, name: 'Plums', cooks: ['Lou', 'Noor', 'Ama'] } })
    expect(namesIn('')).toEqual([])
    const wrong = readTimes({ ...draft, name: '', date: '2027-02-30', guestsFrom: '20:00', covers: '61' })
    expect(wrong.ok ? {} : Object.keys(wrong.error).sort()).toEqual(['covers', 'date', 'guestsFrom', 'name'])
    expect(readClock('19:75')).toBeNull()
  })
  test('F7 a decimal comma is taken to be one only where no number has a point', () => {
    expect([guessDecimal('1,5 l milk'), guessDecimal('1.5 l milk, 2,5 cups'), guessDecimal('1,000 g')]).toEqual([',', '.', '.'])
    expect(guessDecimal('Sit down 19.30. 0,5 kg leeks, 1,5 tsp salt')).toBe(',')
    expect([hasDecimals('1,5 l'), hasDecimals('2 eggs, 3 onions')]).toEqual([true, false])
  })
  test('F7 a file is taken whole as text, or refused whole with what to do', async () => {
    const file = (bytes: readonly (string | Uint8Array<ArrayBuffer>)[], name = 'soup.txt') => new File([...bytes], name)
    expect(await readFile(file(['Crème brûlée']))).toEqual({ ok: true, value: 'Crème brûlée' })
    expect(await readFile(file([new Uint8Array([0x43, 0x72, 0xe8, 0x6d, 0x65])]))).toEqual({ ok: true, value: 'Crème' })
    for (const [made, why] of [
      [file([new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2])], 'soup.png'), /not text/],
      [file([]), /empty/],
      [file(['x'.repeat(2_000_001)]), /larger than 2 MB/],
      [file(['{"format":"tableward/1"}'], 'dinner.json'), /whole evening/],
    ] as const) {
      const read = await readFile(made)
      expect(read.ok ? '' : read.error).toMatch(why)
    }
  })
})
