import type { SitRefusal } from '#server/seats/sit.ts'
import { longDate } from './clock.ts'
import type { InvitationFacts } from './invitation.ts'
import { tooManyTriesText } from './reply.ts'

/** Why a seat was not taken, and what to do. */
export const sitRefusedText = (refusal: Exclude<SitRefusal, { kind: 'unknown' }>): string => {
  switch (refusal.kind) {
    case 'too-many-tries':
      return tooManyTriesText(refusal.seconds)
    case 'taken':
      return 'Somebody has sat down by this link meanwhile. If that was you on another device, go on below.'
    case 'has-account':
      return 'This seat has an account: sign in with its e-mail address and password.'
    case 'already-member':
      return 'You have a seat at this evening already, so this link is somebody else’s. Give it to them.'
    case 'needs-account':
      return 'You are signed out by now. Write your name to sit down, or sign in first and open this link again.'
    case 'cook-taken':
      return 'Somebody else is that cook by now. Choose again.'
    case 'too-many':
      return 'There is no room for another cook in this plan. Say that you are one of its cooks, or ask whoever sent you the link.'
  }
}

/** The text that goes with the link of a seat, to be copied into any message. */
export const seatText = (
  facts: Pick<InvitationFacts, 'name' | 'date' | 'sitDown' | 'hosts'>,
  who: string,
  link: string,
): string =>
  [
    `${who}, will you cook with us? ${facts.name}, ${longDate(facts.date)}; we sit down at ${facts.sitDown}.`,
    `This link is your seat in our plan: ${link}`,
    'It needs no account. Open it on each device you use; it is always you, so keep it to yourself.',
    facts.hosts,
  ]
    .filter((part) => part !== '')
    .join('\n\n')
