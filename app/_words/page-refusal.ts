import { minutesText } from './duration.ts'

/** As server/recipes tells it. */
export type PageRefusal =
  | { readonly kind: 'not-fetched'; readonly why: keyof typeof whyNotFetched }
  | { readonly kind: 'too-often'; readonly seconds: number }

/** Why a page was not fetched, and what to do; no more, so that nobody can feel their way around a network by it. */
export const whyNotFetched = {
  address:
    'Only public addresses are fetched, written whole and without a port, such as https://example.org/soup. Or paste the page’s text.',
  'not-public': 'That address is not on the public web. Open the page yourself and paste its text.',
  redirects: 'The page sends one on and on. Open it yourself and paste its text.',
  slow: 'The page did not come within five seconds. Try again, or open it and paste its text.',
  'too-large': 'The page is larger than 2 MB. Open it yourself and paste the recipe.',
  type: 'What is there is not text. Open it yourself and paste the recipe.',
  status: 'The site does not give this page out. Open it yourself and paste its text.',
  network: 'The page could not be reached. See that the address is right, or open it and paste its text.',
} as const

export const pageRefusalText = (refusal: PageRefusal): string =>
  refusal.kind === 'too-often'
    ? `Those were many pages in a short time. Wait ${minutesText(Math.max(1, Math.ceil(refusal.seconds / 60)))}, or paste the recipe’s text.`
    : whyNotFetched[refusal.why]
