import { countText } from './clock.ts'

const WORDS: ReadonlyMap<string, number> = new Map(Array.from({ length: 13 }, (_, count) => [countText(count), count]))
const AMOUNT = /^(\d{1,4}(?:[.,]\d{1,2})?)\b/

/** Reads a whole number ≥ 1 at the start of the words, "2 shelves", "two", "one of them"; null when there is none. */
export const readCount = (text: string): number | null => {
  const [first = ''] = text.trim().toLowerCase().split(/\s+/)
  const count = /^\d{1,4}$/.test(first) ? Number(first) : first === 'a' || first === 'an' ? 1 : WORDS.get(first)
  return count !== undefined && count >= 1 ? count : null
}

/** As `readCount`, with a part of one: "6", "4.5", "six". */
export const readAmount = (text: string): number | null => {
  const found = AMOUNT.exec(text.trim())
  const amount = found ? Number((found[1] ?? '').replace(',', '.')) : readCount(text)
  return amount !== null && amount > 0 ? amount : null
}
