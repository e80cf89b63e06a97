/** Lets the browser answer and draw before more is done. */
const pause = (): Promise<void> => new Promise((resume) => setTimeout(resume))

/**
 * What opens a plan in the browser. It is come by in parts, so that a slow phone is never held up for as long as all of them take to
 * start: first the library of the shared document, then what is known of its contents, then the rest. The browser alone has it: a second copy of
 * Yjs on the server would not know this one's documents.
 */
export const loadProgram = async () => {
  await import('yjs')
  await pause()
  await import('#lib/plan/wire.ts')
  await pause()
  return import('./open-in-browser.ts')
}
