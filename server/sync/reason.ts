/** What a caught value says, for the log. */
export const reasonOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause))
