import { pause } from './gaps.ts'

/** What the rest stands on, the least first. */
const PARTS = [
  () => import('yjs'),
  () => import('#lib/domain/atoms.ts'),
  () => import('#lib/plan/wire.ts'),
  () => import('#lib/domain/menu.ts'),
  () => import('#lib/plan/layout.ts'),
]

/**
 * What opens a plan in the browser. It is come by in parts, so that a slow phone is never held up for as long as all of them take to
 * start: first the library of the shared document, then what is known of its contents, then the rest. The browser alone has it: a second copy of
 * Yjs on the server would not know this one's documents.
 */
export const loadProgram = async () => {
  for (const load of PARTS) {
    await load()
    await pause()
  }
  return import('./open-in-browser.ts')
}
