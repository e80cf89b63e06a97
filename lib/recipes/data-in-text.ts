import { isPage } from './page-text.ts'

/** A stretch of a paste: words, or a whole page or schema.org data. */
export interface PartOfText {
  readonly isData: boolean
  readonly text: string
}

const PAGE = /^[ \t]*<(?:!doctype|html|head|script)\b/iu
const VOCABULARY = /"@(?:context|type|graph)"/u
const DATA = /^[ \t]*[[{](?:.*"@(?:context|type|graph)"|[ \t]*\r?\n?$)/u
const PAGE_END = '</html>'
const SCRIPT_END = '</script>'

/** Where the brackets that open at `at` are closed, strings told apart; -1 when they never are. */
const bracketsEnd = (text: string, at: number): number => {
  let depth = 0
  let isQuoted = false
  for (let i = at; i < text.length; i += 1) {
    const sign = text.charAt(i)
    if (isQuoted && sign === '\\') i += 1
    else if (sign === '"') isQuoted = !isQuoted
    else if (!isQuoted && (sign === '{' || sign === '[')) depth += 1
    else if (!isQuoted && (sign === '}' || sign === ']')) {
      depth -= 1
      if (depth === 0) return i + 1
    }
  }
  return -1
}

/** Cuts pages and schema.org data out of the words that they were pasted among, in one pass. Text without any is one part, as it is. */
export const dataInText = (text: string): readonly PartOfText[] => {
  // Of these letters alone: others may grow in small letters, and every place after them would be wrong.
  const low = text.replace(/[A-Z]+/gu, (letters) => letters.toLowerCase())
  const [lastPage, lastScript] = [low.lastIndexOf(PAGE_END), low.lastIndexOf(SCRIPT_END)]
  /** A page ends with its closing tag, data in a tag of its own with that one's, what is never closed with the text. */
  const pageEnd = (at: number): number => {
    if (at <= lastPage) return low.indexOf(PAGE_END, at) + PAGE_END.length
    const isScript =
      at > 0 &&
      at <= lastScript &&
      low
        .slice(at, at + 40)
        .trimStart()
        .startsWith('<script')
    return isScript ? low.indexOf(SCRIPT_END, at) + SCRIPT_END.length : text.length
  }
  const parts: PartOfText[] = []
  let [words, at, isUnclosed] = [0, 0, false]
  const cut = (from: number, to: number) => {
    if (text.slice(words, from).trim() !== '') parts.push({ isData: false, text: text.slice(words, from) })
    parts.push({ isData: true, text: text.slice(from, to).trim() })
    words = to
  }
  while (at < text.length) {
    const lineEnd = text.indexOf('\n', at)
    let next = lineEnd < 0 ? text.length : lineEnd + 1
    const line = text.slice(at, next)
    if (at === 0 ? isPage(text) : PAGE.test(line)) {
      next = pageEnd(at)
      cut(at, next)
    } else if (!isUnclosed && DATA.test(line)) {
      const end = bracketsEnd(text, at)
      isUnclosed = end < 0
      if (end >= 0) {
        next = end
        // Brackets without a word of the vocabulary are somebody's notes.
        if (VOCABULARY.test(text.slice(at, end))) cut(at, end)
      }
    }
    at = next
  }
  if (text.slice(words).trim() !== '') parts.push({ isData: false, text: text.slice(words) })
  return parts
}
