const MOST_OCTETS = 75
const encoder = new TextEncoder()

/** One content line folded between whole characters; what follows begins with a space, which counts (RFC 5545, 3.1). */
const folded = (line: string): string => {
  const parts: string[] = []
  let part = ''
  let octets = 0
  for (const sign of line) {
    const more = encoder.encode(sign).length
    if (octets + more > MOST_OCTETS) {
      parts.push(part)
      part = ' '
      octets = 1
    }
    part += sign
    octets += more
  }
  return [...parts, part].join('\r\n')
}

/** A calendar whose lines were folded by characters, folded by octets: a letter may have four. */
export const foldLines = (text: string): string =>
  text
    .replace(/\r\n[\t ]/g, '')
    .split('\r\n')
    .map(folded)
    .join('\r\n')
