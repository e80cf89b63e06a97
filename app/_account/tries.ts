import { minutesText } from '#app/_words/duration.ts'

/** What next-auth's answer to a failed sign-in means. */
export const signInError = (error: string | null | undefined): string => {
  const tries = /^too-many-tries:(\d+)$/.exec(error ?? '')
  if (tries) return tooManyTries(Number(tries[1]))
  return 'That e-mail address and password do not belong together. Nothing you wrote is lost: try again.'
}

export const tooManyTries = (seconds: number): string =>
  `Too many tries. Wait ${minutesText(Math.max(1, Math.ceil(seconds / 60)))}, then try again.`
