import { request } from 'undici'
import { INTERNET, type Network, pinned, SECONDS, vettedAddress } from '#server/web/reach.ts'

/** Hands a sealed message in at a push service; the status it answers with, or null when there is none to be reached. */
export type Post = (to: URL, headers: Readonly<Record<string, string>>, body: Buffer) => Promise<number | null>

const MOST_HEARD = 4_000

/**
 * Over the internet. The address is one that somebody gave: only a public one is dialled, the one that was looked up, and no
 * redirect is followed. What the service says beside its status is not kept.
 */
export const postOver =
  (network: Network = INTERNET): Post =>
  async (to, headers, body) => {
    const signal = network.deadline()
    const address = await vettedAddress(to, network, signal).catch(() => null)
    if (address === null) return null
    const agent = pinned(address, network)
    try {
      const answer = await request(to, {
        method: 'POST',
        dispatcher: agent,
        signal,
        headersTimeout: SECONDS * 1000,
        bodyTimeout: SECONDS * 1000,
        headers,
        body,
      })
      await answer.body.dump({ limit: MOST_HEARD })
      return answer.statusCode
    } catch {
      // Refused, reset, bad certificate, too slow.
      return null
    } finally {
      await agent.destroy()
    }
  }
