const BREAKS = /[,;:.(]| with | until | and then | for \d| at \d/

/** A step in at most `most` characters: its first clause if that is enough to know it by, else cut between words. */
export const shorten = (text: string, most: number): string => {
  const whole = text.trim().replace(/[.;,]+$/, '')
  if (whole.length <= most) return whole
  const clause = whole.split(BREAKS)[0]?.trim() ?? whole
  if (clause.length >= 4 && clause.length <= most) return clause
  const words = clause.split(' ')
  let kept = ''
  for (const word of words) {
    const next = kept ? `${kept} ${word}` : word
    if (next.length > most - 1) break
    kept = next
  }
  return `${(kept || clause.slice(0, Math.max(1, most - 1))).replace(/[ ,;:]+(?:the|a|an|of|in|on|to|and|with)?$/i, '')}…`
}
