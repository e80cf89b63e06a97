import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Live } from '#server/live.ts'
import { bringPage } from '#server/recipes/bring-page.ts'
import type { Network } from '#server/web/reach.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

/** Counts what would go out; nothing does, for every name is one of this machine. */
const home = () => {
  const asked: string[] = []
  const network: Network = {
    resolve: async (host) => {
      asked.push(host)
      return ['127.0.0.1']
    },
    dial: (address, port) => ({ address, port }),
    deadline: () => new AbortController().signal,
  }
  return { asked, network }
}

describe('a page for its recipe', () => {
  test('F4 loopback is refused, by address and by name, before anything is dialled', async () => {
    const user = await somebody('Ama')
    const { network } = home()
    for (const [address, why] of [
      ['http://127.0.0.1/', 'not-public'],
      ['http://[::1]/', 'not-public'],
      ['http://2130706433/', 'not-public'],
      ['https://kitchen.example/soup', 'not-public'],
      ['http://localhost:3000/', 'address'],
      ['file:///etc/passwd', 'address'],
    ] as const)
      expect([address, await bringPage(user.id, address, network)]).toEqual([
        address,
        { ok: false, error: { kind: 'not-fetched', why } },
      ])
  })

  test('F4 who asks too often must wait, others need not, and what is refused so asks nothing of the network', async () => {
    const [user, other] = [await somebody('Ama'), await somebody('Noor')]
    const { asked, network } = home()
    const tries = async (id: string) => {
      const page = await bringPage(id, 'https://kitchen.example/soup', network)
      return page.ok ? null : page.error
    }
    let refused = await tries(user.id)
    let count = 1
    while (refused?.kind === 'not-fetched' && count < 100) {
      refused = await tries(user.id)
      count += 1
    }
    expect(refused).toMatchObject({ kind: 'too-often' })
    expect(asked).toHaveLength(count - 1)
    expect(await tries(other.id)).toEqual({ kind: 'not-fetched', why: 'not-public' })
  })
})
