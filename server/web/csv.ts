import { stringify } from 'csv-stringify/sync'

// What a spreadsheet takes for the beginning of a formula, also after blanks or in its full-width form.
const FORMULA = /^\s*[=+\-@|%＝＋－＠]/u
const CONTROLS = /[\p{Cc}\u2028\u2029]+/gu

/** A cell that no spreadsheet runs: control characters are blanks, what could be a formula begins with an apostrophe. */
export const safeCell = (text: string): string => {
  const plain = text.replace(CONTROLS, ' ')
  return FORMULA.test(plain) ? `'${plain}` : plain
}

/** A table as RFC 4180 has it, every cell quoted and safe, in UTF-8 with a mark that spreadsheets know it by. */
export const csvText = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  stringify(
    [head, ...rows].map((row) => row.map(safeCell)),
    { quoted: true, quoted_empty: true, record_delimiter: 'windows', bom: true },
  )
