import { reasonOf } from '#server/sync/reason.ts'
import { type CopyFolders, cleanCopies, type Erased, keepBackup } from './copies.ts'

/** What is to be done to files of copies. */
export type Order =
  | {
      readonly kind: 'backup'
      readonly from: string
      readonly folder: string
      readonly name: string
      readonly keep: number
    }
  | { readonly kind: 'clean'; readonly folders: CopyFolders; readonly erased: readonly Erased[] }

export type Answer = { readonly ok: true; readonly file: string | null } | { readonly ok: false; readonly why: string }

/** Does an order at once and says how it went. */
export const orderOf = (order: Order): Answer => {
  try {
    if (order.kind === 'backup') return { ok: true, file: keepBackup(order.from, order.folder, order.name, order.keep) }
    cleanCopies(order.folders, order.erased)
    return { ok: true, file: null }
  } catch (cause) {
    return { ok: false, why: reasonOf(cause) }
  }
}
