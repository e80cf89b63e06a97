const WIDTHS: readonly [chars: RegExp, em: number][] = [
  [/[ijl.,:;'’|!·]/, 0.27],
  [/[frt()[\]"“”\-–]/, 0.4],
  [/ /, 0.26],
  [/[mwMW…—%@]/, 0.9],
  [/[A-Z]/, 0.69],
  [/\d/, 0.61],
]

/** About how wide a line of the sans face is, in pixels: on the safe side, for nobody measures text in a pure function. */
export const textWidth = (text: string, size: number): number =>
  Array.from(text).reduce((sum, char) => sum + (WIDTHS.find(([chars]) => chars.test(char))?.[1] ?? 0.57), 0) * size * 1.03

/** Cuts a line to a width, between words where it can. */
export const fitText = (text: string, size: number, width: number): string => {
  if (textWidth(text, size) <= width) return text
  let kept = ''
  for (const char of text) {
    if (textWidth(`${kept}${char}…`, size) > width) break
    kept += char
  }
  const space = kept.lastIndexOf(' ')
  const cut = space > kept.length * 0.55 ? kept.slice(0, space) : kept
  return `${cut.replace(/(?: (?:the|a|an|of|in|on|to|and|with|for|into))+$/i, '').replace(/[ ,;:.–-]+$/, '')}…`
}
