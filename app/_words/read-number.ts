/** The whole number that a text begins with: "3", "2 shelves". Null when there is none, or when more than words follow it. */
export const readWhole = (text: string): number | null => {
  const found = /^\s*(\d{1,4})(?:\s+\p{L}[\p{L}\s]*|\s*)$/u.exec(text)
  return found ? Number(found[1]) : null
}

/** Degrees as people write them: "250", "250 °C", "7,5°". Null when it is none. */
export const readDegrees = (text: string): number | null => {
  const found = /^\s*(\d{1,3}(?:[.,]\d)?)\s*(?:°?\s*c?)?\s*$/i.exec(text)
  return found ? Number(found[1]?.replace(',', '.')) : null
}
