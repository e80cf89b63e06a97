import { lookup } from 'node:dns/promises'
import { Agent, buildConnector } from 'undici'
import { isPublicAddress } from './public-address.ts'

/** What reaches out. The real one is `INTERNET`. */
export interface Network {
  readonly resolve: (host: string) => Promise<readonly string[]>
  /** Where a vetted address is really dialled. */
  readonly dial: (address: string, port: number) => { readonly address: string; readonly port: number }
  /** Ends the whole of it, redirects included. */
  readonly deadline: () => AbortSignal
}

export const SECONDS = 5

export const INTERNET: Network = {
  resolve: async (host) => (await lookup(host, { all: true, verbatim: true })).map((found) => found.address),
  dial: (address, port) => ({ address, port }),
  deadline: () => AbortSignal.timeout(SECONDS * 1000),
}

const aborted = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => {
    if (signal.aborted) reject(signal.reason)
    signal.addEventListener('abort', () => reject(signal.reason), { once: true })
  })

/** The one address that will be dialled: resolved once, and none of those the name has may be other than public. */
export const vettedAddress = async (url: URL, network: Network, signal: AbortSignal): Promise<string | null> => {
  const literal = url.hostname.replace(/^\[|\]$/g, '')
  if (isAddress(literal)) return isPublicAddress(literal) ? literal : null
  const found = await Promise.race([network.resolve(url.hostname), aborted(signal)])
  return found.every(isPublicAddress) ? (found[0] ?? null) : null
}

/** WHATWG URL has turned every way of writing an address (0x7f.1, 2130706433) into one of these. */
export const isAddress = (host: string): boolean => host.includes(':') || /^\d+\.\d+\.\d+\.\d+$/.test(host)

/** Connects to the vetted address and nothing else: no name is resolved again. The certificate must still be the name's. */
export const pinned = (address: string, network: Network): Agent => {
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
