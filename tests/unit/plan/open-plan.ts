import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'

/** A document with that evening in it. */
export const planOf = (evening: Evening): Y.Doc => {
  const doc = new Y.Doc()
  writeEvening(doc, evening, { epoch: 'epoch-1', minClient: 1 })
  return doc
}

/** Another device's copy of a document. */
export const copyOf = (doc: Y.Doc): Y.Doc => {
  const copy = new Y.Doc()
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc))
  return copy
}

/** Gives each copy what the other has. */
export const exchange = (a: Y.Doc, b: Y.Doc): void => {
  const [fromA, fromB] = [Y.encodeStateAsUpdate(a, Y.encodeStateVector(b)), Y.encodeStateAsUpdate(b, Y.encodeStateVector(a))]
  Y.applyUpdate(a, fromB)
  Y.applyUpdate(b, fromA)
}
