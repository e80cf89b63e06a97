import fc from 'fast-check'
import { Parser } from 'htmlparser2'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { CookSheet } from '#app/_print/cook-sheet.tsx'
import { MenuCard } from '#app/_print/menu-card.tsx'
import { WallSheet } from '#app/_print/wall-sheet.tsx'
import { namesOf } from '#app/_words/names.ts'
import { cardText, needLines } from '#app/_words/print.ts'
import { sheetWords } from '#app/_words/sheet.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import { epochMsOf, msOfInstant } from '#lib/domain/time.ts'
import { type SheetLine, sheetOf } from '#lib/night/sheet.ts'
import { safetyOf } from '#lib/safety/safety-of.ts'
import { cardAllergens } from '#lib/table/card-allergens.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { planned } from './planned.ts'

const EVENINGS = (['a-lamb', 'c-pork', 'potluck'] as const).map((name) => [name, planned(loadEvening(name), 40)] as const)
const [[, lamb] = EVENINGS[0] ?? []] = EVENINGS
const potluck = EVENINGS[2]?.[1]
if (!lamb || !potluck) throw new Error('no evening')

const linesFor = ({ evening, order }: typeof lamb, cook: string): readonly SheetLine[] =>
  sheetOf(evening, order, cook).flatMap(({ lines }) => lines)

test.each(EVENINGS)('PR1 %s: whatever the order gives to a cook stands on that cook’s sheet, once, at its time', (_, plan) => {
  const { evening, order } = plan
  let seen = 0
  for (const { id } of evening.cooks) {
    const said = linesFor(plan, id).flatMap((line) =>
      line.kind === 'do' ? [`${line.task.step} ${line.task.batch} ${line.what} ${line.at}`] : [],
    )
    expect(new Set(said).size).toBe(said.length)
    const begun = order.cues
      .filter(({ cooks }) => cooks.includes(id))
      .map(({ step, batch, start }) => `${step} ${batch} begin ${msOfInstant(start)}`)
    const touched = order.cues.flatMap(({ step, batch, start, touches }) =>
      touches
        .filter(({ cook }) => cook === id)
        .map(({ at }) => `${step} ${batch} ${msOfInstant(at) === msOfInstant(start) ? 'begin' : 'touch'} ${msOfInstant(at)}`),
    )
    seen += begun.length + touched.length
    expect([...begun, ...touched].filter((each) => !said.includes(each))).toEqual([])
  }
  expect(seen).toBeGreaterThan(20)
})

test.each(EVENINGS)('PR2 %s: the blocks follow one another, each up to its course, and every course is there', (_, plan) => {
  const { evening, order } = plan
  for (const { id } of evening.cooks) {
    const blocks = sheetOf(evening, order, id)
    const times = blocks.flatMap(({ lines }) => lines.map(({ at }) => at))
    expect(times).toEqual([...times].sort((a, b) => a - b))
    const courses = blocks.flatMap((block) => (block.kind === 'course' ? [block] : []))
    expect(courses.map(({ course }) => course)).toEqual(
      order.courses.toSorted((a, b) => msOfInstant(a.toTable) - msOfInstant(b.toTable)).map(({ course }) => course),
    )
    for (const { lines, toTable } of courses) expect(lines.every(({ at }) => at < toTable)).toBe(true)
    for (const block of blocks) {
      if (block.kind === 'before') expect(block.lines.every(({ at }) => at < epochMsOf(evening, evening.guestsFrom))).toBe(true)
      if (block.kind === 'day') expect(block.day).toBeLessThan(0)
    }
  }
})

test.each(EVENINGS)('PR2 %s: every oven is turned by somebody, each time on one sheet', (_, plan) => {
  const { evening, order } = plan
  const turns = evening.cooks.flatMap(({ id }) => linesFor(plan, id)).filter((line) => line.kind === 'oven')
  const hot = order.ovens.filter(({ line }) => line.length > 1)
  expect(hot.length).toBeGreaterThan(0)
  for (const { kit, preheats } of hot) {
    const own = turns.filter(({ oven }) => oven === kit)
    expect(new Set(own.map(({ at }) => at)).size).toBe(own.length)
    for (const instant of preheats)
      expect(own.filter(({ at, turn }) => at === msOfInstant(instant) && turn === 'up')).toHaveLength(1)
  }
})

test('PR3 a line says where, how hot, until what sign and how warm inside, and who goes on with it', () => {
  const { evening, names } = potluck
  const all = evening.cooks.flatMap(({ id }) =>
    linesFor(potluck, id).map((line) => ({ line, ...sheetWords(line, id, evening, names) })),
  )
  const found = (head: RegExp) => {
    const one = all.find((each) => head.test(each.head))
    if (!one) throw new Error(`no line ${head}`)
    return one.notes.join(' ')
  }
  expect(found(/^Heat the braise/)).toMatch(/In the oven at \d+ to \d+°\..* Then leave it until \d\d:\d\d\..*74° inside\./)
  expect(found(/^Take the braise out/)).toMatch(/74° inside\..* Then \w+: ladle the braise/)
  expect(found(/^Leave: /)).toMatch(/On the way [\d½]+ min, there by \d\d:\d\d\./)
  // What somebody else’s kitchen has is not looked for in the host’s.
  const away = evening.kitchens.filter(({ id }) => id !== evening.host).map(({ name }) => name)
  expect(
    all.filter(({ head }) => /^Set the oven in /.test(head) && away.some((name) => head.includes(name))).length,
  ).toBeGreaterThan(0)
})

const ingredient = (over: Partial<Ingredient>): Ingredient => ({
  id: 'i1',
  dish: 'D',
  order: 'a',
  food: 'carrots',
  amount: null,
  scales: 'yes',
  allergens: [],
  checked: 'known',
  contains: [],
  ...over,
})

test('PR4 a card names what is known and sends whoever must know more to the hosts; it never says that a dish is free of anything', () => {
  const [dish] = lamb.evening.dishes
  if (!dish) throw new Error('no dish')
  const said = (...own: readonly Partial<Ingredient>[]) =>
    cardText(
      cardAllergens(
        { rules: 'uk', ingredients: own.map((each, at) => ingredient({ dish: dish.id, id: `i${at}`, ...each })) },
        dish,
      ),
    )
  expect(said()).toBe('Please ask your hosts.')
  expect(said({ food: 'stock', checked: 'unknown' })).toMatch(/ask your hosts/)
  expect(said({ food: 'stock', checked: 'check-label', allergens: ['celery'] })).toBe(
    'Contains celery. There may be more: please ask your hosts.',
  )
  // Known by its name though nobody put it down; a label read under rules that do not list celery is not the whole of it.
  expect(said({ food: 'butter' })).toBe('Contains milk.')
  expect(said({ food: 'walnuts', allergens: ['nuts'] })).toBe('Contains nuts and walnut.')
  expect(said({ food: 'stock', labelRules: 'us' })).toMatch(/ask your hosts/)
  expect(said({ food: 'carrots' })).toBe('None of the listed allergens is noted.')
  const every = fc.record({
    food: fc.constantFrom('carrots', 'butter', 'stock', 'pesto', 'walnuts', 'a jar of something'),
    checked: fc.constantFrom('known' as const, 'check-label' as const, 'unknown' as const),
    allergens: fc.subarray(['milk', 'nuts', 'celery', 'gluten'] as const).map((some) => [...some]),
  })
  fc.assert(
    fc.property(fc.array(every, { maxLength: 5 }), (own) => {
      const text = said(...own)
      expect(text).not.toMatch(/\bfree\b|\bsafe\b|\bwithout\b/i)
      for (const { allergens } of own) for (const allergen of allergens) expect(text).toContain(allergen)
      if (own.length === 0 || own.some(({ checked }) => checked !== 'known')) expect(text).toMatch(/ask your hosts/)
    }),
    { numRuns: 100 },
  )
})

const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc
    .array(
      fc.constantFrom(
        '<script>alert(1)</script>',
        '<img src=x onerror=alert(1)>',
        '</style>',
        '</li></ol>',
        '"><svg onload=x>',
        "'",
        '"',
        '&amp;',
        '&#60;b&#62;',
        '<!--',
        ']]>',
        '{{7*7}}',
        'javascript:x',
        '\u202e',
        '👩‍🍳',
        ' ',
        'soup',
      ),
      { minLength: 1, maxLength: 5 },
    )
    .map((parts) => parts.join('')),
)

/** What a page may be made of: none of these can do anything. */
const HARMLESS = new Set('article section header h2 h3 p ul ol li b span div small'.split(' '))

/** Tags, attributes and text, as another program reads them. */
const readHtml = (markup: string) => {
  const tags = new Set<string>()
  const attributes = new Set<string>()
  let text = ''
  const parser = new Parser(
    {
      onopentag: (name, all) => {
        tags.add(name)
        for (const each of Object.keys(all)) attributes.add(each)
      },
      ontext: (part) => {
        text += part
      },
      oncomment: () => tags.add('a comment'),
      onprocessinginstruction: () => tags.add('an instruction'),
    },
    { decodeEntities: true },
  )
  parser.end(markup)
  return { tags: [...tags], attributes: [...attributes], text }
}

test('PR8 the paper of somebody who is told nothing of the guests says so', () => {
  expect(needLines({ scope: 'none', needs: [], unknown: 0 }).join(' ')).toMatch(/not told .* ask the hosts/)
  expect(needLines({ scope: 'all', needs: [], unknown: 0 })).toEqual([])
  expect(needLines({ scope: 'dishes', needs: [{ need: 'vegan', grade: 'avoids', guests: 2 }], unknown: 1 })).toHaveLength(2)
})

test('PR5 10,000 hostile strings are text on every sheet: nothing but harmless tags comes of them, and they can be read', () => {
  const texts = fc.sample(hostile, { numRuns: 10_000, seed: 9 }).map((text) => cleanText(text, false).toString())
  let at = 0
  // As many as there is room for: what one of them opens the next may close.
  const next = (most: number): string => {
    let text = texts[at++ % texts.length] ?? ''
    for (; text.length + (texts[at % texts.length] ?? '').length < most; at += 1) text += texts[at % texts.length] ?? ''
    return text.slice(0, most)
  }
  const { evening, order } = lamb
  while (at < texts.length) {
    const named: Evening = {
      ...evening,
      name: next(120),
      cooks: evening.cooks.map((cook) => ({ ...cook, name: next(80) })),
      kitchens: evening.kitchens.map((kitchen) => ({
        ...kitchen,
        name: next(80),
        kit: kitchen.kit.map((kit) =>
          kit.kind === 'oven' ? { ...kit, name: next(60) } : kit.kind === 'tool' ? { ...kit, tool: next(40) } : kit,
        ),
      })),
      courses: evening.courses.map((course) => ({ ...course, name: next(120) })),
      dishes: evening.dishes.map((dish) => ({ ...dish, name: next(120) })),
      steps: evening.steps.map((step) => ({
        ...step,
        does: next(400),
        until: { sign: next(200) },
        ways: step.ways.map((way) => ({ ...way, touches: way.touches.map((touch) => ({ ...touch, does: next(80) })) })),
      })),
      drinks: evening.courses.map(({ id }, index) => ({
        id: `drink-${index}`,
        course: id,
        order: 'a',
        name: next(120),
        role: 'with',
        mlEach: 100,
        abv: 0,
      })),
    }
    const names = namesOf(named)
    const shared = { evening: named, order, names, foot: next(100), needs: [next(100)] }
    const findings = safetyOf(named, order, { isHot: false })
    const pages = [
      <MenuCard key="card" evening={named} drinks allergens />,
      ...named.cooks.map(({ id }) => <CookSheet key={id} {...shared} cook={id} findings={findings} />),
      <WallSheet key="wall" {...shared} onPages={() => undefined} />,
    ].map((page) => readHtml(renderToStaticMarkup(page)))
    for (const { tags, attributes } of pages) {
      expect(tags.filter((tag) => !HARMLESS.has(tag))).toEqual([])
      expect(attributes.filter((name) => !/^(class|style|aria-(label|hidden)|data-(pages|points))$/.test(name))).toEqual([])
    }
    const [card, first, ...others] = pages
    const wall = others.at(-1)
    for (const { name } of named.dishes) expect(card?.text).toContain(name)
    expect(first?.text).toContain(named.cooks[0]?.name)
    expect(wall?.text).toContain(named.name)
  }
})
