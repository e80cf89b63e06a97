import { fail, type Result } from '#lib/domain/result.ts'
import { live } from '#server/live.ts'
import { INTERNET, type Network } from '#server/web/reach.ts'
import { fetchPage, type NotFetched, type Page } from './fetch-page.ts'

export type PageRefusal =
  | { readonly kind: 'not-fetched'; readonly why: NotFetched }
  | { readonly kind: 'too-often'; readonly seconds: number }

/** The page at an address that somebody signed in gave, for its recipe. Each of them may ask so often; every try counts. */
export const bringPage = async (
  userId: string,
  address: string,
  network: Network = INTERNET,
): Promise<Result<Page, PageRefusal>> => {
  const seconds = await live().limits.try('recipe-page', userId)
  if (seconds > 0) return fail({ kind: 'too-often', seconds })
  const page = await fetchPage(address, network)
  return page.ok ? page : fail({ kind: 'not-fetched', why: page.error })
}
