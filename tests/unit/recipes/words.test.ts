import { describe, expect, test } from 'vitest'
import { readYields } from '#lib/recipes/head-lines.ts'
import { readIngredient } from '#lib/recipes/ingredient.ts'
import { isoMinutes } from '#lib/recipes/linked-data.ts'
import { readStep } from '#lib/recipes/step.ts'
import { lineText, stepTexts } from '#tests/support/recipes/score.ts'

const line = (text: string, decimal: '.' | ',' = '.') => readIngredient(text, null, decimal)
const step = (text: string) => readStep(text, null, '.')

describe('lines of ingredients', () => {
  test.each([
    ['1 x 400 g tin chopped tomatoes', '1 tin / 400 g | chopped tomatoes'],
    ['2 × 400g cans of chickpeas, drained', '2 can / 400 g | chickpeas'],
    ['1 lb 2 oz braising steak', '9/8 lb | braising steak'],
    ['a pinch of salt', '1 pinch | salt'],
    ['1½ tsp salt', '3/2 tsp | salt'],
    ['2 1/4 cups milk', '9/4 cup | milk'],
    ['1⁄2 cup milk', '1/2 cup | milk'],
    ['.5 kg beef', '1/2 kg | beef'],
    ['two eggs', '2 | eggs'],
    ['half a dozen eggs', '6 | eggs'],
    ['a lemon', '1 | lemon'],
    ['the juice of 2 lemons', '2 | the juice of lemons'],
    ['flour 200 g', '200 g | flour'],
    ['2 to 3 tablespoons of olive oil', '2..3 tbsp | olive oil'],
    ['1 14-ounce can coconut milk', '1 can / 14 oz | coconut milk'],
    ['1 US cup sugar', '1 US cup | sugar'],
    ['1kg/2lb 4oz potatoes', '1 kg | potatoes'],
    ['1,000 g potatoes', '1000 g | potatoes'],
  ])('Z1 "%s"', (text, expected) => expect(lineText(line(text))).toBe(expected))

  test('Z1 the same amount in other measures is kept beside it, not mixed', () => {
    expect(line('1kg/2lb 4oz potatoes').also).toEqual([{ n: '9/4', unit: 'lb' }])
    expect(line('1 cup (120 g) flour').also).toEqual([{ n: '120', unit: 'g' }])
  })
  test('Z4 a decimal comma is read only where the text has decimal commas', () => {
    expect(lineText(line('1,5 kg potatoes', ','))).toBe('3/2 kg | potatoes')
    const unread = line('1,5 kg potatoes')
    expect(unread.amount).toBeNull()
    expect(unread.doubts).toEqual([{ kind: 'decimal', from: 0, to: 3 }])
    expect(line('1.5 kg potatoes', ',').doubts[0]?.kind).toBe('decimal')
  })
  test.each([
    ['1 onion or 2 shallots', 'alternative'],
    ['parsley', 'no-amount'],
    ['1 cup plus 20 g sugar', 'sum'],
    ['2 tbsp plus 1 tsp sugar', 'sum'],
    ['1234567890 eggs', 'number'],
    [`1 ${'very '.repeat(100)}long line`, 'too-long'],
  ] as const)('Z3 "%s" is flagged: %s', (text, kind) => {
    expect(line(text).doubts.map((doubt) => doubt.kind)).toContain(kind)
  })
  test.each([
    ['2 large eggs', 'whole'],
    ['1 tsp salt', 'by-taste'],
    ['½ tsp black pepper', 'by-taste'],
    ['200 g flour', 'yes'],
    ['2 tsp baking powder', 'yes'],
    ['salt', 'by-taste'],
    ['half a lemon', 'yes'],
  ] as const)('Z1 "%s" scales: %s', (text, scales) => expect(line(text).scales).toBe(scales))
})

describe('steps', () => {
  test.each([
    ['Cook for 2 to 3 minutes.', ['takes 2..3']],
    ['Braise for an hour and a half.', ['takes 90']],
    ['Simmer for three quarters of an hour.', ['takes 45']],
    ['Bake for 1h45.', ['takes 105']],
    ['Bake for 1 hr 20 mins.', ['takes 80']],
    ['Roast for 45 minutes to 1 hour.', ['takes 45..60']],
    ['Marinate overnight.', ['marinate 480..960']],
    ['Chill for at least 2 hours, or up to 24 hours.', ['chill 120..1440']],
    ['Leave to prove for 1 hour or more.', ['rise 60..']],
    ['Rest for up to 30 minutes.', ['rest ..30']],
    ['Fry for 3 minutes on each side.', ['takes 6']],
    ['Roast for 20 minutes per 500 g.', ['by-weight 20']],
    ['Whisk for 30 seconds.', ['takes 0.5']],
    ['In a second bowl beat the eggs.', []],
    ['Bake at 350°F.', ['oven 176.7']],
    ['Bake at 180 degrees Celsius.', ['oven 180']],
    ['Bake at 160C fan.', ['oven 180']],
    ['Bake at gas mark ½.', ['oven 120']],
    ['Bake at 160-170°C.', ['oven 160..170']],
    ['Heat the oil to 180°C.', ['fat 180']],
    ['Cook until the inside reaches 145°F.', ['core 62.8']],
    ['Warm the milk to 40°C.', ['other 40']],
  ])('Z1 "%s"', (text, expected) => expect(stepTexts(step(text))).toEqual(expected))

  test.each([
    ['Bake at 180 for 20.', ['vague', 'vague']],
    ['Cook 20 mintues.', ['number']],
    ['Bake 12 until done.', ['number']],
    ['Give it some minutes.', ['vague']],
    ['Fry for a few minutes.', ['vague']],
    ['Bake in a hot oven.', ['vague']],
    ['Leave overnight.', ['vague']],
    ['Bake at 180°.', ['vague']],
    ['Bake at 200°C/300°F.', ['vague']],
  ])('Z3 "%s" is flagged', (text, kinds) => expect(step(text).doubts.map((doubt) => doubt.kind)).toEqual(kinds))

  test('Z1 kit, care and signs come with the words they came from', () => {
    const text = 'Simmer in a large saucepan for 20 minutes, stirring now and then, until thick.'
    const read = step(text)
    expect(read.kit.map((each) => each.value)).toEqual(['ring'])
    expect(read.care?.value).toBe('eye')
    expect(read.signs.map((each) => each.value)).toEqual(['until thick'])
    expect(step('Take it out of the oven.').kit).toEqual([])
    for (const each of [...read.times, ...read.kit, ...read.signs]) {
      expect(each.to).toBeGreaterThan(each.from)
      expect(text.slice(each.from, each.to).trim()).not.toBe('')
    }
    expect(text.slice(read.times[0]?.from, read.times[0]?.to)).toBe('20 minutes')
  })
})

describe('heads', () => {
  test.each([
    ['PT1H30M', 90],
    ['P0Y0M0DT0H35M0.000S', 35],
    ['PT90M', 90],
    ['P1DT2H', 1560],
    ['PT1.5H', 90],
    ['P1M', null], // a month, not a minute: ISO 8601
    ['P1Y', null],
    ['PT0M', null],
    ['20 minutes', null],
    ['', null],
  ])('Z5 the ISO 8601 duration %s is %s minutes', (text, minutes) => expect(isoMinutes(text)).toBe(minutes))
  test.each([
    ['Serves 4', 4, 4],
    ['SERVES 4–6 as a starter', 4, 6],
    ['Makes about 24 biscuits', 24, 24],
    ['Yield: 8 servings', 8, 8],
    ['6 portions', 6, 6],
    ['For six people', 6, 6],
  ])('Z1 "%s"', (text, least, most) => expect(readYields(text, '.')).toMatchObject({ least, most }))
  test.each(['Serve hot', '4 eggs', 'For the sauce', '6', 'Serves 0'])('Z1 "%s" is no yield', (text) => {
    expect(readYields(text, '.')).toBeNull()
  })
})

describe('things and deeds', () => {
  test.each([
    ['Chill the cream for 20 minutes.', ['chill 20']],
    ['Chill the pastry case, then brush the rest with egg. Leave to cool for 10 minutes.', ['cool 10']],
    ['Beat with a stand mixer for 5 minutes.', ['takes 5']],
    ['Simmer with the bay leaves for 10 minutes.', ['takes 10']],
    ['Keep stirring for 5 minutes.', ['takes 5']],
    ['Rest somewhere warm for 8 minutes.', ['rest 8']],
    ['Let the dough rest for 10 minutes.', ['rest 10']],
    ['Leave to simmer for 10 minutes.', ['takes 10']],
    ['It keeps in the fridge for 3 days.', ['ahead ..4320']],
    ['Keep warm for up to 20 minutes.', ['rest ..20']],
    ['Take out of the freezer 10 minutes before serving.', ['mark 10']],
    ['Put the roasting tin back for 10 minutes.', ['takes 10']],
  ])('Z1 "%s"', (text, expected) => expect(stepTexts(step(text))).toEqual(expected))
})
