// Dashes, list signs, boxes to tick and little pictures. One class, so that it cannot lose itself.
const BULLET = /^[\s\p{So}\p{Pd}•*·+‣⁃∙]+/u

/** A line without the signs of a list before it; a line of nothing else is as it was. */
export const withoutBullet = (line: string): string => {
  const bare = line.replace(BULLET, '')
  return bare === '' ? line.trim() : bare.trimEnd()
}
