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

// The reader is another library than the writer. Controls are blanks (no line of an evening has any), and nothing else is changed.
test('SH14 ten thousand hostile cells come back as they were written, and none begins what a spreadsheet runs', () => {
  let cells = 0
  fc.assert(
    fc.property(fc.array(fc.array(nasty, { minLength: 4, maxLength: 4 }), { minLength: 5, maxLength: 5 }), (rows) => {
      const read: string[][] = parse(csvText(['a', 'b', 'c', 'd'], rows), { bom: true })
      expect(read[0]).toEqual(['a', 'b', 'c', 'd'])
      expect(read.slice(1).map((row) => row.map((cell) => cell.replace(/^'/, '')))).toEqual(
        rows.map((row) => row.map((cell) => cell.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').replace(/^'/, ''))),
      )
      for (const cell of read.slice(1).flat()) {
        cells += 1
        expect(/^[\s\ufeff]*[=+\-@\t\r\0＝＋－＠]/u.test(cell), JSON.stringify(cell)).toBe(false)
      }
    }),
    { numRuns: 500 },
  )
  expect(cells).toBe(10_000)
})
