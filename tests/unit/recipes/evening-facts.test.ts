import { describe, expect, test } from 'vitest'
import { timesShown } from '#app/_recipes/times.ts'
import { readFacts } from '#lib/recipes/evening-facts.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'

const told = (line: string) => {
  const { covers, sitDown, weekday } = readFacts([line])
  return [covers?.value ?? null, sitDown?.value ?? null, weekday?.value ?? null]
}
const factsOf = (text: string) => {
  const paste = readPaste(text, '.')
  if (!paste.ok) throw new Error(paste.error.kind)
  return paste.value
}
const soup = (serves: number) =>
  `Leek soup\nServes ${serves}\n\n400 g leeks\n1 l stock\n\n1. Simmer the leeks in the stock for 20 minutes.`
const tart = (serves: number) => `Plum tart\nServes ${serves}\n\n500 g plums\n200 g flour\n\n1. Bake at 180°C for 40 minutes.`

describe('what a paste says of its evening', () => {
  test.each([
    ['8 people', [8, null, null]],
    ['Menu for eight, 19.30', [8, '19:30', null]],
    ['Saturday night, sit down 7.30 pm, 8 people', [8, '19:30', 6]],
    ['Guests from 19.00, sit down at 8', [null, '20:00', null]],
    ['> see you Sunday!', [null, null, 0]],
  ])('Z13 "%s" is read', (line, facts) => {
    expect(told(line)).toEqual(facts)
  })

  test.each([
    '6 to 8 people',
    'for 2 hours',
    'for 8 pm at the latest',
    '8 eggs',
    'Saturday 12 December',
    'Sunday roast',
    'by 3.10.2026',
    '19.20 €',
  ])('Z13 "%s" is not taken for one number of people, a time to sit down or the next such day', (line) => {
    const [covers, sitDown, weekday] = told(line)
    expect([covers, weekday]).toEqual([null, null])
    if (!line.includes('pm')) expect(sitDown).toBeNull()
  })

  test('Z13 two that differ are none, and nothing that is read is certain', () => {
    expect(readFacts(['for 8', '6 people']).covers).toBeNull()
    expect(readFacts(['for 8', '8 people', 'Friday 19.30'])).toEqual({
      covers: { value: 8, certain: false },
      sitDown: { value: '19:30', certain: false },
      weekday: { value: 5, certain: false },
    })
  })

  test('Z13 a line about the evening over a menu without headings is no course, and none is lost', () => {
    const paste = factsOf('Dinner for 8, Saturday, sit down 19.30\n\nLeek soup\nRoast guinea fowl\nPlum tart')
    expect(paste.courses.map((course) => course.name)).toEqual(['Starter', 'Main', 'Dessert'])
    expect(paste.leftOver).toEqual(['Dinner for 8, Saturday, sit down 19.30'])
    expect(paste.facts.covers?.value).toBe(8)
    // What is eaten is no line about the evening, whatever number stands in it.
    expect(factsOf('Rib of beef for 8\nPlum tart').facts.covers).toBeNull()
  })

  test('Z13 recipes say for how many only when all agree', () => {
    expect(factsOf(`${soup(8)}\n\n${tart(8)}`).facts.covers?.value).toBe(8)
    expect(factsOf(`${soup(8)}\n\n${tart(6)}`).facts.covers).toBeNull()
    expect(factsOf(`Dinner for 10\n\n${soup(8)}\n\n${tart(8)}`).facts.covers?.value).toBe(10)
  })

  test('Z13 what was pasted is suggested, and said, until a person writes another', () => {
    const facts = readFacts(['Saturday, sit down 20.00, for 8'])
    // 25 November 2026 is a Wednesday.
    const shown = timesShown({}, facts, '2026-11-25')
    expect(shown.times).toMatchObject({ date: '2026-11-28', sitDown: '20:00', guestsFrom: '19:30', covers: '8' })
    expect(shown.pasted).toEqual(['date', 'sitDown', 'covers'])
    expect(timesShown({}, facts, '2026-11-28').times.date).toBe('2026-12-05')
    const written = timesShown({ covers: '5', sitDown: '19:00' }, facts, '2026-11-25')
    expect(written.times).toMatchObject({ date: '2026-11-28', sitDown: '19:00', guestsFrom: '18:30', covers: '5' })
    expect(written.pasted).toEqual(['date'])
    expect(timesShown({}, null, '2026-11-25')).toMatchObject({ times: { covers: '6', sitDown: '19:30' }, pasted: [] })
  })
})
