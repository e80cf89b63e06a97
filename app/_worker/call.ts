/** A call that came while the device slept. */
export interface Call {
  readonly alert: string
  /** The page to look at. */
  readonly path: string
}

/** Word of something new, for whoever asked to be told. */
export interface News {
  readonly notice: string
  readonly path: string
}

/** What a push message says; null for what is not a call of ours. */
export const readCall = (text: string): Call | null => {
  const { alert, path } = saidIn(text)
  if (typeof alert !== 'string' || alert.length > 300) return null
  return typeof path === 'string' && /^\/evenings\/[A-Za-z0-9-]+\/tonight$/.test(path) ? { alert, path } : null
}

/** What a push message says that is no call; null for what is not ours. */
export const readNews = (text: string): News | null => {
  const { notice, path } = saidIn(text)
  if (typeof notice !== 'string' || notice.length > 20) return null
  return typeof path === 'string' && /^\/evenings\/[A-Za-z0-9-]+\/(order|guests)$/.test(path) ? { notice, path } : null
}

const saidIn = (text: string): Readonly<Record<string, unknown>> => {
  try {
    const said: unknown = JSON.parse(text)
    return typeof said === 'object' && said !== null ? { ...said } : {}
  } catch {
    return {}
  }
}
