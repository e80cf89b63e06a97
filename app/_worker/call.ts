/** A call that came while the device slept. */
export interface Call {
  readonly alert: string
  /** The page to look at. */
  readonly path: string
}

/** What a push message says; null for what is not a call of ours. */
export const readCall = (text: string): Call | null => {
  try {
    const said: unknown = JSON.parse(text)
    if (typeof said !== 'object' || said === null || !('alert' in said) || !('path' in said)) return null
    const { alert, path } = said
    if (typeof alert !== 'string' || alert.length > 300) return null
    return typeof path === 'string' && /^\/evenings\/[A-Za-z0-9-]+\/tonight$/.test(path) ? { alert, path } : null
  } catch {
    return null
  }
}
