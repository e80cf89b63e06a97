/** Whoever claims frames again and again holds nobody up for longer than this: of a key that is held down every frame is an answer. */
const IN_A_ROW = 3

let isClaimed = false
let last = { frame: -1, row: 0 }

/** What was just done or written has the next frame for itself: what takes turns waits for the one after it. */
export const claimFrame = (): void => {
  isClaimed = true
  requestAnimationFrame(() =>
    setTimeout(() => {
      isClaimed = false
    }),
  )
}

/** Whether the frame of that time is claimed. The same answer for all who ask in one frame. */
export const isTaken = (frame: number): boolean => {
  if (frame !== last.frame) last = { frame, row: isClaimed && last.row < IN_A_ROW ? last.row + 1 : 0 }
  return last.row > 0
}

// A key or a tap is answered first.
if (typeof window !== 'undefined')
  for (const name of ['keydown', 'pointerdown', 'click'])
    window.addEventListener(name, claimFrame, { capture: true, passive: true })
