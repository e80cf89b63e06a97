const WRITTEN = /^(\d{1,2})(?:\s*[:.h]\s*([0-5]\d)?)?\s*(am|pm|a\.m\.|p\.m\.)?$/i
const BARE = /^([01]\d|2[0-3])([0-5]\d)$/

/** Reads a time of day as people write it, "17:00", "17.30", "1730", "17h", "5 pm", "noon", as HH:MM; null when it is none. */
export const readClock = (text: string): string | null => {
  const trimmed = text.trim().toLowerCase()
  if (trimmed === 'noon' || trimmed === 'midday') return '12:00'
  const bare = BARE.exec(trimmed)
  if (bare) return `${bare[1]}:${bare[2]}`
  const found = WRITTEN.exec(trimmed)
  if (!found) return null
  const half = found[3]?.slice(0, 1)
  const written = Number(found[1])
  if (half && (written < 1 || written > 12)) return null
  const hour = half === 'p' ? (written % 12) + 12 : half === 'a' ? written % 12 : written
  return hour > 23 ? null : `${String(hour).padStart(2, '0')}:${found[2] ?? '00'}`
}
