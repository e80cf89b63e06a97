/** Where to go after signing in: a path of our own, never another site. */
export const nextPage = (wanted: string | null | undefined): string =>
  wanted && /^\/(?![/\\])/.test(wanted) && !/^\/sign-(in|up)/.test(wanted) ? wanted : '/'
