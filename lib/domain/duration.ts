/** Ticks are the evening's grid: 30 s each. */
export const TICK_SECONDS = 30
export const TICKS_PER_MINUTE = 60 / TICK_SECONDS

const PATTERN = /^P(?:(\d{1,4})D)?(?:T(?:(\d{1,5})H)?(?:(\d{1,6})M)?(?:(\d{1,7})S)?)?$/

const match = (text: string): RegExpExecArray | null => {
  const found = PATTERN.exec(text)
  // "P" and "PT1H" differ only in having a number after a designator: a bare "P" or a trailing "T" is no duration.
  return found && /\d/.test(text) && !text.endsWith('T') ? found : null
}

/** Whether the text is an ISO 8601 duration of whole days, hours, minutes and seconds. */
export const isDuration = (text: string): boolean => match(text) !== null

/** Seconds of an ISO 8601 duration; a day is 24 h of elapsed time. Throws on anything else: parse first. */
export const secondsOf = (duration: string): number => {
  const found = match(duration)
  if (!found) throw new RangeError(`not a duration: ${duration}`)
  const [days, hours, minutes, seconds] = found.slice(1).map((part) => Number(part ?? 0)) as [number, number, number, number]
  return ((days * 24 + hours) * 60 + minutes) * 60 + seconds
}

/** Ticks of a duration that is planned, rounded up: a plan never promises less time than is needed. */
export const ticksUp = (duration: string): number => Math.ceil(secondsOf(duration) / TICK_SECONDS)

/** Ticks of a duration that is a limit, rounded down: a plan never uses more than is allowed. */
export const ticksDown = (duration: string): number => Math.floor(secondsOf(duration) / TICK_SECONDS)

/** The shortest ISO 8601 form of a number of seconds ≥ 0: "PT1H30M", "PT0S". */
export const durationOf = (seconds: number): string => {
  if (!(seconds >= 0) || !Number.isInteger(seconds)) throw new RangeError(`not a whole number of seconds: ${seconds}`)
  const days = Math.floor(seconds / 86_400)
  const hours = Math.floor((seconds % 86_400) / 3600)
  const minutes = Math.floor((seconds % 3600) / 60)
  const rest = seconds % 60
  const date = days ? `${days}D` : ''
  const time = `${hours ? `${hours}H` : ''}${minutes ? `${minutes}M` : ''}${rest ? `${rest}S` : ''}`
  return date || time ? `P${date}${time ? `T${time}` : ''}` : 'PT0S'
}

export const durationOfTicks = (ticks: number): string => durationOf(ticks * TICK_SECONDS)
export const minutesOf = (duration: string): number => secondsOf(duration) / 60
