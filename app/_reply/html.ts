declare const SAFE: unique symbol

/** Text that is HTML already: everything that a person wrote in it has been escaped. */
export type Html = { readonly [SAFE]: true; readonly text: string }

type Piece = Html | readonly Html[] | string | number | false | null

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

const textOf = (piece: Piece): string => {
  if (piece === false || piece === null) return ''
  if (typeof piece === 'object') return 'text' in piece ? piece.text : piece.map(({ text }) => text).join('')
  return String(piece).replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? '')
}

/** A template of HTML: what is put into it is text, unless it is HTML that was made here. Attributes stand in double quotes. */
export const html = (strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html =>
  asHtml(strings.map((string, at) => string + textOf(pieces[at] ?? null)).join(''))

/** Only for what no person wrote: our own style sheet and script. */
export const asHtml = (text: string): Html => ({ text }) as Html
