import { fail, ok, type Result } from '#lib/domain/result.ts'

export interface Refused {
  readonly message: string
  readonly fields: Readonly<Record<string, string>>
}

const UNREACHED: Refused = {
  message: 'The server cannot be reached. Everything you wrote is still here: try again when the connection is back.',
  fields: {},
}

const refusedBy = (answer: unknown): Refused => {
  const { message, fields } = (typeof answer === 'object' && answer !== null ? answer : {}) as Partial<Refused>
  return {
    message: typeof message === 'string' ? message : 'That did not work. Everything you wrote is still here: try again.',
    fields: fields ?? {},
  }
}

/** Posts JSON to our own server. Every failure is words for the person; nothing is thrown. */
export const askServer = async <T>(path: string, body: unknown): Promise<Result<T, Refused>> => {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    const answer: unknown = await response.json().catch(() => null)
    return response.ok ? ok(answer as T) : fail(refusedBy(answer))
  } catch {
    return fail(UNREACHED)
  }
}
