/** What a page and the service worker say to each other. */
export type ToWorker =
  /** Keep these pages for when there is no network. `name`: of their evening, for the page that is shown instead of others. */
  { readonly kind: 'keep'; readonly name: string; readonly pages: readonly string[] }

export type ToPage =
  /** Does this page ring for it? Answered through the port; no answer is a no. */
  | { readonly kind: 'do-you-ring'; readonly alert: string }
  /** It was told by a notification. */
  | { readonly kind: 'was-told'; readonly alert: string }

/** The caches of this origin that hold pages, whoever made them. */
export const PAGES = 'tableward-pages-'
export const FILES = 'tableward-files-'
