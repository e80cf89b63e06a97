/** No piece of work is longer, in ms, before the browser may answer and draw. */
const PIECE_MS = 5

/** Lets the browser answer and draw before more is done. */
export const pause = (): Promise<void> => new Promise((resume) => setTimeout(resume))

/** Does the work in pieces, with a pause before each. Gives the way to call it off. */
export const inGaps = (work: Iterator<unknown>, then: () => void): (() => void) => {
  let isOver = false
  const go = async () => {
    for (;;) {
      await pause()
      const until = performance.now() + PIECE_MS
      while (performance.now() < until) {
        if (isOver) return
        if (work.next().done) return then()
      }
    }
  }
  void go()
  return () => {
    isOver = true
  }
}
