/** Widths of the sans face in em, measured at weight 400, by what letters are alike. */
const WIDTHS: readonly [chars: RegExp, em: number][] = [
  [/[il.,:;'’|!·I]/, 0.24],
  [/[jt()[\]rf“”/]/, 0.37],
  [/ /, 0.25],
  [/[mwMWNOQ—%]/, 0.82],
  [/[A-Z]/, 0.66],
  [/\d/, 0.61],
  [/[ckxszavy-]/, 0.51],
]

/** Chosen labels are set a little bolder. */
const MARGIN = 1.02

/** Each letter is looked up once: a drawing measures some thousands of them. */
const known = new Map<string, number>()
const letterWidth = (char: string): number => {
  const found = known.get(char)
  if (found !== undefined) return found
  const em = WIDTHS.find(([chars]) => chars.test(char))?.[1] ?? 0.58
  known.set(char, em)
  return em
}

/** About how wide a line of the sans face is, in pixels: on the safe side, for nobody measures text in a pure function. */
export const textWidth = (text: string, size: number): number => {
  let em = 0
  for (const char of text) em += letterWidth(char)
  return em * size * MARGIN
}

/** Cuts a line to a width, between words where it can. */
export const fitText = (text: string, size: number, width: number): string => {
  if (textWidth(text, size) <= width) return text
  let kept = ''
  let used = textWidth('…', size)
  for (const char of text) {
    used += textWidth(char, size)
    if (used > width) break
    kept += char
  }
  const whole = kept
    .slice(0, Math.max(0, kept.lastIndexOf(' ')))
    .replace(/(?: (?:the|a|an|of|in|on|to|and|with|for|into))+$/i, '')
  // Half a word says more than one word of three.
  const cut = whole.length >= kept.length * 0.6 ? whole : kept
  return `${cut.replace(/[ ,;:.–-]+$/, '')}…`
}

/** The words that fit on a first line, and the others. A single word that does not fit is left to be cut. */
export const breakLine = (text: string, size: number, width: number): { readonly first: string; readonly rest: string } => {
  const words = text.split(' ')
  let kept = 1
  while (kept < words.length && textWidth(words.slice(0, kept + 1).join(' '), size) <= width) kept += 1
  return { first: fitText(words.slice(0, kept).join(' '), size, width), rest: words.slice(kept).join(' ') }
}
