import type { AddressInfo } from 'node:net'
import { connect, createServer, type Socket } from 'node:net'

/** A network cable between a client and a port: it can be pulled out, and it can go dead without anybody being told. */
export interface Cable {
  readonly port: number
  /** Ends every connection and lets no new one through. */
  pull(): void
  /** Nothing comes through any more, and nobody is told. */
  deaden(): void
  plugIn(): void
  close(): Promise<void>
}

export const openCable = async (target: () => number): Promise<Cable> => {
  const pairs = new Set<readonly [Socket, Socket]>()
  let isDead = false
  let isPulled = false
  const server = createServer((near) => {
    if (isPulled) return void near.destroy()
    const far = connect(target(), '127.0.0.1')
    const pair = [near, far] as const
    pairs.add(pair)
    const pass = (from: Socket, to: Socket) => {
      from.on('data', (bytes) => {
        if (!isDead) to.write(bytes)
      })
      from.on('error', () => to.destroy())
      from.on('close', () => {
        pairs.delete(pair)
        if (!isDead) to.destroy()
      })
    }
    pass(near, far)
    pass(far, near)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const cut = () => {
    for (const [near, far] of pairs) {
      near.destroy()
      far.destroy()
    }
    pairs.clear()
  }
  return {
    port: (server.address() as AddressInfo).port,
    pull() {
      isPulled = true
      cut()
    },
    deaden() {
      isDead = true
    },
    plugIn() {
      if (isDead) cut()
      isDead = false
      isPulled = false
    },
    close() {
      cut()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
}
