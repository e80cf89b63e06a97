/** Of the headers as server/web/forwarded.ts leaves them: whatever the client said in them has been taken out. */
export interface RequestHeaders {
  get(name: string): string | null
}

/** Whether the person's browser speaks TLS, to us or to a proxy we trust. */
export const isSecure = (headers: RequestHeaders): boolean => headers.get('x-forwarded-proto') === 'https'

/** Where the request comes from, for counting tries. */
export const addressOf = (headers: RequestHeaders): string => headers.get('x-forwarded-for') ?? 'unknown'

/** The path that was asked for, with its query. */
export const pathOf = (headers: RequestHeaders): string => headers.get('x-path') ?? '/'
