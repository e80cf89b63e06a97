import type { Link } from '#app/_sync/plan.ts'
import type { CommandRefusal } from '#lib/plan/wire.ts'
import { countOf } from './clock.ts'
import type { Names } from './names.ts'

type Closed = Extract<Link, { kind: 'closed' }>['why']

/** Why the connection was closed for good, and what to do about it. */
export const closedWords: Readonly<Record<Closed, { readonly says: string; readonly todo: string }>> = {
  'sign-in': {
    says: 'You are signed out.',
    todo: 'Sign in again, or open your link again, to go on; what you changed is kept on this device.',
  },
  removed: { says: 'You are no longer a cook of this evening.', todo: 'Ask its host if that is a mistake.' },
  gone: { says: 'This evening is gone.', todo: 'Its host has deleted it.' },
  'other-epoch': {
    says: 'This evening was put back from a backup.',
    todo: 'Load the page again to see it as it now is; what you had is kept on this device, and you can bring it in again.',
  },
  refused: {
    says: 'A change from this device was refused.',
    todo: 'Load the page again: you will see what the others see.',
  },
  reload: { says: 'There is a newer Tableward.', todo: 'Load the page again to go on.' },
}

/** The link in few words, for the badge. "Saved" is said only when the server has said so, of all `waiting` taps as well. */
export const linkText = (link: Link, waiting = 0): string => {
  const taps = countOf(waiting, 'tap')
  switch (link.kind) {
    case 'connecting':
      return 'Connecting…'
    case 'saved':
      return waiting > 0 ? `Sending ${taps}…` : 'Saved'
    case 'saving':
      return waiting > 0 ? `Sending ${taps}…` : 'Saving…'
    case 'offline':
      if (waiting > 0) return `Not connected, ${link.unsent ? `changes and ${taps}` : taps} kept on this device`
      return link.unsent ? 'Not connected, changes kept on this device' : 'Not connected'
    case 'closed':
      return closedWords[link.why].says
  }
}

/** Why what was asked for did not come through, and what to do. */
export const refusalText = (why: CommandRefusal, names: Names): string => {
  switch (why.kind) {
    case 'taken':
      return `${names.cookName(why.by)} has this already.`
    case 'not-yours':
      return 'This is not yours to give away; ask the host.'
    case 'full':
      return 'Three have this already: no more can stand at one thing.'
    case 'unknown-target':
      return 'This was removed meanwhile.'
    case 'unknown-cook':
      return 'That cook was removed meanwhile.'
    case 'not-stored':
      return 'The server could not keep it. Try again.'
    case 'no-seat':
      return 'Say which cook you are first, under Cooks.'
    case 'not-tonight':
      return 'That is not this evening. Look at the time, or at the date of the evening.'
    case 'too-long':
      return 'That is longer than twelve hours. Change its usual minutes instead.'
    case 'too-late':
      return 'It was told over a minute ago. Tell what is so now instead.'
    case 'stays':
      return 'This cannot be taken back. Tell what is so now instead.'
  }
}
