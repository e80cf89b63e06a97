import { lookup } from 'node:dns/promises'
import { Agent, buildConnector, type Dispatcher, request } from 'undici'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { isPublicAddress } from './public-address.ts'
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

/** What reaches out. The real one is `INTERNET`. */
export interface Network {
  readonly resolve: (host: string) => Promise<readonly string[]>
  /** Where a vetted address is really dialled. */
  readonly dial: (address: string, port: number) => { readonly address: string; readonly port: number }
  /** Ends the whole fetch, redirects included. */
  readonly deadline: () => AbortSignal
}

const SECONDS = 5
const MOST_BYTES = 2_000_000
const MOST_REDIRECTS = 3
const LONGEST_ADDRESS = 2000

export const INTERNET: Network = {
  resolve: async (host) => (await lookup(host, { all: true, verbatim: true })).map((found) => found.address),
  dial: (address, port) => ({ address, port }),
  deadline: () => AbortSignal.timeout(SECONDS * 1000),
}

const parseAddress = (text: string, base?: string): URL | null => {
  if (text.length > LONGEST_ADDRESS || !URL.canParse(text, base)) return null
  const url = new URL(text, base)
  const plain = url.username === '' && url.password === '' && url.port === '' && url.hostname !== ''
  return plain && (url.protocol === 'http:' || url.protocol === 'https:') ? url : null
}

const aborted = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => {
    if (signal.aborted) reject(signal.reason)
    signal.addEventListener('abort', () => reject(signal.reason), { once: true })
  })

/** The one address that will be dialled: resolved once, and none of those the name has may be other than public. */
const vettedAddress = async (url: URL, network: Network, signal: AbortSignal): Promise<string | null> => {
  const literal = url.hostname.replace(/^\[|\]$/g, '')
  if (isAddress(literal)) return isPublicAddress(literal) ? literal : null
  const found = await Promise.race([network.resolve(url.hostname), aborted(signal)])
  return found.every(isPublicAddress) ? (found[0] ?? null) : null
}

/** WHATWG URL has turned every way of writing an address (0x7f.1, 2130706433) into one of these. */
const isAddress = (host: string): boolean => host.includes(':') || /^\d+\.\d+\.\d+\.\d+$/.test(host)

/** Connects to the vetted address and nothing else: no name is resolved again. The certificate must still be the name's. */
const pinned = (address: string, network: Network): Agent => {
  const connect = buildConnector({ timeout: SECONDS * 1000 })
  return new Agent({
    pipelining: 0,
    connect: (options, done) => {
      const port = Number(options.port || (options.protocol === 'https:' ? 443 : 80))
      const dialled = network.dial(address, port)
      connect(
        { ...options, servername: options.servername ?? options.hostname, hostname: dialled.address, port: String(dialled.port) },
        done,
      )
    },
  })
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
