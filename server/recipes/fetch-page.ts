import { type Dispatcher, request } from 'undici'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { INTERNET, type Network, pinned, SECONDS, vettedAddress } from '#server/web/reach.ts'
import { readBody } from './read-body.ts'

/** Why a page was not fetched; nothing more is told, so that nobody can feel their way around a network by it. */
export type NotFetched =
  /** No http or https address, one with a name and password in it, or with a port of its own. */
  | 'address'
  /** It has no address, or one that is not public. */
  | 'not-public'
  | 'redirects'
  | 'slow'
  | 'too-large'
  | 'type'
  | 'status'
  | 'network'

export interface Page {
  readonly text: string
  /** Where it was found in the end. */
  readonly address: string
}

const MOST_BYTES = 2_000_000
const MOST_REDIRECTS = 3
const LONGEST_ADDRESS = 2000

const parseAddress = (text: string, base?: string): URL | null => {
  if (text.length > LONGEST_ADDRESS || !URL.canParse(text, base)) return null
  const url = new URL(text, base)
  const plain = url.username === '' && url.password === '' && url.port === '' && url.hostname !== ''
  return plain && (url.protocol === 'http:' || url.protocol === 'https:') ? url : null
}

const header = (response: Dispatcher.ResponseData, name: string): string => {
  const value = response.headers[name]
  return (Array.isArray(value) ? value.join(',') : (value ?? '')).trim().toLowerCase()
}

const READABLE = /^(text\/html|text\/plain|application\/xhtml\+xml|application\/(ld\+)?json)\s*(;|$)/

const decode = (bytes: Buffer, type: string): string => {
  const said =
    /charset=["']?([\w-]{1,40})/.exec(type) ??
    /<meta[^>]{0,200}charset=["']?([\w-]{1,40})/i.exec(bytes.toString('latin1', 0, 2048))
  try {
    return new TextDecoder(said?.[1] ?? 'utf-8').decode(bytes)
  } catch {
    // A charset that nobody knows.
    return new TextDecoder('utf-8').decode(bytes)
  }
}

type Step = { readonly kind: 'page'; readonly text: string } | { readonly kind: 'moved'; readonly to: string }

const visit = async (url: URL, network: Network, signal: AbortSignal): Promise<Result<Step, NotFetched>> => {
  const address = await vettedAddress(url, network, signal)
  if (address === null) return fail('not-public')
  const agent = pinned(address, network)
  try {
    const response = await request(url, {
      dispatcher: agent,
      signal,
      headersTimeout: SECONDS * 1000,
      bodyTimeout: SECONDS * 1000,
      headers: {
        accept: 'text/html, application/ld+json, application/json;q=0.9, text/plain;q=0.8',
        'accept-encoding': 'gzip, br',
      },
    })
    const moved = [301, 302, 303, 307, 308].includes(response.statusCode)
    if (moved) {
      const to = response.headers.location
      return typeof to === 'string' ? ok({ kind: 'moved', to }) : fail('status')
    }
    if (response.statusCode !== 200) return fail('status')
    const type = header(response, 'content-type')
    if (!READABLE.test(type)) return fail('type')
    const body = await readBody(response.body, header(response, 'content-encoding'), MOST_BYTES, signal)
    return body.ok ? ok({ kind: 'page', text: decode(body.value, type) }) : body
  } finally {
    await agent.destroy()
  }
}

/**
 * Fetches the page at a web address that a person gave, for its words alone: http(s) on the usual port, public addresses only, each
 * redirect vetted anew and at most three, five seconds in all, 2 MB before and after unpacking, text only.
 */
export const fetchPage = async (text: string, network: Network = INTERNET): Promise<Result<Page, NotFetched>> => {
  const signal = network.deadline()
  let url = parseAddress(text.trim())
  try {
    for (let redirects = 0; redirects <= MOST_REDIRECTS; redirects += 1) {
      if (!url) return fail('address')
      const step = await visit(url, network, signal)
      if (!step.ok) return signal.aborted ? fail('slow') : step
      if (step.value.kind === 'page') {
        url.hash = ''
        return ok({ text: step.value.text, address: url.href })
      }
      url = parseAddress(step.value.to, url.href)
    }
    return fail('redirects')
  } catch {
    // Refused, reset, unknown name, bad certificate: to the person it is one thing.
    return fail(signal.aborted ? 'slow' : 'network')
  }
}
