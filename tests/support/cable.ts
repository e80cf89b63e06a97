import type { AddressInfo } from 'node:net'
import { connect, createServer, type Socket } from 'node:net'
import type { Dice } from './dice.ts'

/** A network cable between a client and a port: it can be pulled out, go dead without anybody being told, clog up and wear out. */
export interface Cable {
  readonly port: number
  /** Ends every connection and lets no new one through. */
  pull(): void
  /** Nothing comes through any more, and nobody is told. */
  deaden(): void
  /** Nothing comes through for now, and nobody is told; it comes when the cable is plugged in, as TCP sends again what was lost. */
  clog(): void
  plugIn(): void
  /**
   * From now on so many pieces of a hundred are lost. TCP hides a loss, so what is left of it is played: the piece is sent again
   * and comes late, with all that is behind it, or it never comes and the connection ends within it.
   */
  wear(perCent: number, dice: Dice): void
  /** How many pieces came late, and how many connections ended within one. */
  readonly losses: { readonly late: number; readonly torn: number }
  close(): Promise<void>
}

/** Of three lost pieces one ends the connection; a late one waits for so many turns of the event loop. */
const TORN = 1 / 3
const LATE = [1, 60] as const

export const openCable = async (target: () => number): Promise<Cable> => {
  const pairs = new Set<readonly [Socket, Socket]>()
  const clogged = new Set<() => void>()
  const losses = { late: 0, torn: 0 }
  let state: 'whole' | 'pulled' | 'dead' | 'clogged' = 'whole'
  let lost: (() => 'late' | 'torn' | null) | null = null
  let dice: Dice | null = null

  const pass = (from: Socket, to: Socket) => {
    /** What happens at this end, in its order; while the first of it waits, all of it does. */
    const queue: (() => void)[] = []
    let turns = 0
    const flow = () => {
      clogged.delete(flow)
      while (queue.length > 0) {
        if (state === 'clogged') return void clogged.add(flow)
        if (turns > 0) {
          turns -= 1
          return void setImmediate(flow)
        }
        queue.shift()?.()
      }
    }
    const next = (work: () => void) => {
      queue.push(work)
      if (queue.length === 1) flow()
    }
    from.on('data', (bytes) => {
      if (state === 'dead') return
      const loss = lost?.() ?? null
      if (loss) losses[loss] += 1
      if (loss === 'late' && dice) turns += dice.int(...LATE)
      if (loss === 'torn') {
        next(() => to.write(bytes.subarray(0, bytes.length >> 1)))
        next(() => {
          to.destroy()
          from.destroy()
        })
      } else next(() => to.write(bytes))
    })
    from.on('error', () => from.destroy())
    from.on('close', () => {
      if (state !== 'dead') next(() => to.destroy())
    })
  }
  const server = createServer((near) => {
    if (state === 'pulled') return void near.destroy()
    const far = connect(target(), '127.0.0.1')
    const pair = [near, far] as const
    pairs.add(pair)
    for (const end of pair) end.on('close', () => near.destroyed && far.destroyed && pairs.delete(pair))
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
    losses,
    pull() {
      state = 'pulled'
      cut()
    },
    deaden() {
      state = 'dead'
    },
    clog() {
      state = 'clogged'
    },
    plugIn() {
      if (state === 'dead') cut()
      state = 'whole'
      for (const flow of [...clogged]) flow()
    },
    wear(perCent, chance) {
      dice = chance
      lost = () => (chance.chance(perCent / 100) ? (chance.chance(TORN) ? 'torn' : 'late') : null)
    },
    close() {
      cut()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
}
