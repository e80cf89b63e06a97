/** How a request of a page is answered: a page of the night or of the shop that is kept, a file that never changes, another page, or not by us. */
export type Way = 'kept-page' | 'file' | 'other-page' | 'none'

const KEPT_PAGE = /^\/evenings\/[A-Za-z0-9-]+\/(tonight|order|shopping)$/
const FILE = /^\/(_next\/static\/.+|mark\.svg|icons\/[a-z0-9-]+\.png)$/
/** What belongs to a person's sign-in or to a guest's link stays between the browser and the server. */
const NEVER = /^\/(api|reply|calendar|sign-in|sign-up|account)(\/|$)/

export const isKeptPage = (path: string): boolean => KEPT_PAGE.test(path)
const isFile = (path: string): boolean => FILE.test(path)

export interface Asked {
  readonly method: string
  /** A whole page is asked for, not a part of one. */
  readonly isPage: boolean
  readonly url: URL
  /** Where the service worker is from. */
  readonly origin: string
}

export const wayOf = ({ method, isPage, url, origin }: Asked): Way => {
  if (method !== 'GET' || url.origin !== origin || NEVER.test(url.pathname)) return 'none'
  if (isPage) return isKeptPage(url.pathname) ? 'kept-page' : 'other-page'
  return isFile(url.pathname) ? 'file' : 'none'
}
