import { createDecoder, hasContent } from 'lib0/decoding'
import * as Y from 'yjs'
import type { Writer } from './check-offer.ts'
import { checkTouched } from './check-touched.ts'
import { LIMITS } from './limits.ts'
import { reasonOf } from './reason.ts'
import { type Place, touchedBy } from './touched.ts'

/** What the room makes of an update that somebody sent. */
export type Admission =
  /** `effect`: what it changes, in the server's own words; null: nothing. `clients`: ids that are this member's from now on. */
  | {
      readonly kind: 'admitted'
      readonly effect: Uint8Array | null
      readonly clients: readonly number[]
      /** Where it changed something. */
      readonly places: readonly Place[]
    }
  /** Something before it is missing: no fault of the sender's, who must come again and resync. */
  | { readonly kind: 'gap' }
  | { readonly kind: 'refused'; readonly why: string }

export interface Sender extends Writer {
  readonly memberId: string
}

const refused = (why: string): Admission => ({ kind: 'refused', why })

/** No device writes so many letters; a clock near the end of the numbers would break its readers. */
const LAST_CLOCK = 2 ** 40

/**
 * Tries an update on the shadow, a document that is ahead of the stored one by what is on its way to the disk. Unless it is
 * admitted the shadow is spoilt and must be made anew.
 */
export const admit = (shadow: Y.Doc, owners: ReadonlyMap<number, string>, sender: Sender, update: Uint8Array): Admission => {
  const effects: Uint8Array[] = []
  const collect = (effect: Uint8Array) => effects.push(effect)
  // Yjs may add a transaction of its own to tidy up after the update's: every one of them counts.
  const transactions: Y.Transaction[] = []
  const note = (done: Y.Transaction) => transactions.push(done)
  const before = Y.decodeStateVector(Y.encodeStateVector(shadow))
  const isOwn = (client: number): boolean => {
    const owner = owners.get(client)
    return owner === undefined ? !before.has(client) && client !== shadow.clientID : owner === sender.memberId
  }
  shadow.on('update', collect)
  shadow.on('afterTransaction', note)
  try {
    const { from, to } = Y.parseUpdateMeta(update)
    for (const [client, clock] of from) {
      const known = before.get(client) ?? 0
      if (!isOwn(client) && (to.get(client) ?? 0) > known) return refused(`the client id ${client} is not this member's`)
      if (clock > known) return { kind: 'gap' }
      if ((to.get(client) ?? 0) > LAST_CLOCK) return refused('a clock too large')
    }
    const decoder = createDecoder(update)
    Y.readUpdate(decoder, shadow, 'sender')
    // Updates of another version may read as an empty one with something behind it.
    if (hasContent(decoder)) return refused('more than an update')
    if (shadow.store.pendingStructs !== null || shadow.store.pendingDs !== null) return { kind: 'gap' }
    const after = Y.decodeStateVector(Y.encodeStateVector(shadow))
    const grown = [...after].filter(([client, clock]) => clock !== (before.get(client) ?? 0)).map(([client]) => client)
    const foreign = grown.find((client) => !isOwn(client))
    if (foreign !== undefined) return refused(`the client id ${foreign} is not this member's`)
    const clients = grown.filter((client) => !owners.has(client))
    if (clients.length > LIMITS.newClients) return refused('too many client ids at once')
    for (const transaction of transactions) {
      const why = checkTouched(shadow, transaction, sender)
      if (why !== null) return refused(why)
    }
    const effect = effects.length === 0 ? null : Y.mergeUpdates(effects)
    return { kind: 'admitted', effect, clients, places: touchedBy(shadow, transactions) }
  } catch (cause) {
    return refused(`no update: ${reasonOf(cause)}`)
  } finally {
    shadow.off('update', collect)
    shadow.off('afterTransaction', note)
  }
}
