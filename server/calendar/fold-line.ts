const MOST_OCTETS = 75

const octetsOf = (sign: string): number => {
  const code = sign.codePointAt(0) ?? 0
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
}

/** One content line folded between whole characters; what follows begins with a space, which counts (RFC 5545, 3.1). */
export const foldLine = (line: string): string => {
  let all = ''
  let octets = 0
  for (const sign of line) {
    const more = octetsOf(sign)
    if (octets + more > MOST_OCTETS) {
      all += '\r\n '
      octets = 1
    }
    all += sign
    octets += more
  }
  return all
}
