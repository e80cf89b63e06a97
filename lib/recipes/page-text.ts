import { Parser } from 'htmlparser2'

const LINE_ENDS = new Set([
  'p',
  'div',
  'li',
  'br',
  'h1',
  'h2',
  'h3',
  'h4',
  'h5',
  'h6',
  'tr',
  'section',
  'article',
  'ul',
  'ol',
  'dt',
  'dd',
  'header',
  'footer',
])
const UNSEEN = new Set(['script', 'style', 'noscript', 'template', 'head', 'svg', 'iframe', 'select', 'nav'])

/** What a page says: the text of its JSON-LD blocks, and its words with one line for each block. Nothing in it is run. */
export interface PageText {
  readonly data: readonly string[]
  readonly words: string
}

/** Whether a text is a page rather than a recipe that happens to hold a "<". */
export const isPage = (text: string): boolean =>
  /^\s*<(?:!doctype|html|head|body|script|article|div|main|section|p|h1|ul|!--)/iu.test(text.slice(0, 2000))

// The parser's work grows with the square of how deep tags are open (90 s for 2 MB of them, seen with 12.0.0). No real page comes near.
const DEEPEST = 1000
const PIECE = 16_384

/** Reads HTML as text, entities decoded by htmlparser2, in one pass. Null when its tags are nested deeper than any page's. */
export const readPage = (html: string): PageText | null => {
  const data: string[] = []
  const words: string[] = []
  let unseen = 0
  let block: string[] | null = null
  let depth = 0
  const parser = new Parser(
    {
      onopentag(name, attributes) {
        depth += 1
        if (name === 'script' && /^\s*application\/ld\+json\s*(;|$)/iu.test(attributes.type ?? '')) block = []
        if (UNSEEN.has(name)) unseen += 1
        if (LINE_ENDS.has(name)) words.push('\n')
      },
      ontext(text) {
        if (block) block.push(text)
        else if (unseen === 0) words.push(text.replace(/\s+/gu, ' '))
      },
      onclosetag(name) {
        depth -= 1
        if (block && name === 'script') {
          data.push(block.join(''))
          block = null
        }
        if (UNSEEN.has(name)) unseen = Math.max(0, unseen - 1)
        if (LINE_ENDS.has(name)) words.push('\n')
      },
    },
    { decodeEntities: true },
  )
  for (let at = 0; at < html.length; at += PIECE) {
    parser.write(html.slice(at, at + PIECE))
    if (depth > DEEPEST) return null
  }
  parser.end()
  return { data, words: words.join('') }
}

/** The words of a piece of text that may hold tags and entities: "R&amp;D", "<p>Stir</p>". Text without either is as it was. */
export const plainWords = (text: string): string => {
  if (!/[<&]/.test(text)) return text
  const page = readPage(text)
  if (!page) return text
  return page.words
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)
    .join('\n')
}
