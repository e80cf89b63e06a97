import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { csvText } from '#server/web/csv.ts'

const nasty = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.string({
    unit: fc.constantFrom('"', ',', ';', '\r', '\n', '\t', '\0', "'", '=', '+', '-', '@', '|', '%', '＝', ' ', 'a', '1'),
  }),
  fc
    .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\0', '＝', ' =', '\n@', '%', '|'), fc.string({ maxLength: 12 }))
    .map(([first, rest]) => `${first}${rest}`),
  fc.constantFrom(
    '=HYPERLINK("http://evil.example")',
    '+1+cmd|" /C calc"!A0',
    '@SUM(1)',
    '"\r\n=1+1',
    'a","=1',
    '\u2028=1',
    '\ufeff=1',
  ),
)

const SEED = Number(process.env.SEED ?? 1)
const plain = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').replace(/^'/, '')

// The reader is another library than the writer. Controls are blanks (no line of an evening has any), and nothing else is changed.
test('SH14 ten thousand hostile cells come back as they were written, and none begins what a spreadsheet runs', () => {
  const cells = fc.sample(nasty, { numRuns: 10_000, seed: SEED })
  const rows = Array.from({ length: 2_500 }, (_, row) => cells.slice(row * 4, row * 4 + 4))
  const read: string[][] = parse(csvText(['a', 'b', 'c', 'd'], rows), { bom: true })
  expect(read[0]).toEqual(['a', 'b', 'c', 'd'])
  const found = read.slice(1).flat()
  expect(read.slice(1).every((row) => row.length === 4)).toBe(true)
  expect(found).toHaveLength(10_000)
  const changed = found.flatMap((cell, at) => (cell.replace(/^'/, '') === plain(cells[at] ?? '') ? [] : [[cells[at], cell]]))
  expect(changed).toEqual([])
  expect(found.filter((cell) => /^[\s\ufeff]*[=+\-@\t\r\0＝＋－＠]/u.test(cell))).toEqual([])
  expect(found.filter((cell) => /^'\s*[=+\-@]/.test(cell)).length).toBeGreaterThan(1_000)
})
