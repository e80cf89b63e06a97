import { longDate } from './clock.ts'

/** What an invitation tells of the evening. */
export interface InvitationFacts {
  readonly name: string
  /** yyyy-mm-dd */
  readonly date: string
  /** HH:MM */
  readonly from: string
  /** HH:MM */
  readonly sitDown: string
  /** Who asks, as words: "Mira and Jonas". */
  readonly hosts: string
  readonly place: string
}

/** The text that goes with a link, to be copied into any message. */
export const invitationText = (facts: InvitationFacts, link: string): string =>
  [
    `We would love to have you at our table: ${facts.name}, ${longDate(facts.date)}, from ${facts.from}. We sit down at ${facts.sitDown}.${facts.place ? ` ${facts.place}.` : ''}`,
    `Please tell us by this link whether you come, and what you cannot or will not eat: ${link}`,
    'It needs no account, it is for you alone, and you can change your answer.',
    facts.hosts,
  ].join('\n\n')

/** A reminder; the link itself stands in the message before it. */
export const reminderText = (facts: InvitationFacts): string =>
  [
    `We have not heard from you yet about ${facts.name} on ${longDate(facts.date)}. Will you come, and what can you not eat?`,
    'Please answer by the link in our last message. If it is lost, tell us and we send you a new one.',
    facts.hosts,
  ].join('\n\n')

export const invitationSubject = (facts: InvitationFacts): string => `${facts.name}, ${longDate(facts.date)}`
