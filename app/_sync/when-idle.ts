const AT_LAST_MS = 5_000

/** Runs once the page has nothing else to do: what is fetched or drawn then stands in nobody's way. Gives the way to call it off. */
export const whenIdle = (run: () => void): (() => void) => {
  // Safari has no such call.
  if (typeof requestIdleCallback === 'undefined') {
    const asked = setTimeout(run, 1_000)
    return () => clearTimeout(asked)
  }
  const asked = requestIdleCallback(run, { timeout: AT_LAST_MS })
  return () => cancelIdleCallback(asked)
}
