import type { NoticeKind } from './kinds.ts'

/** What a letter says: that there is something and where to look. No name, no dish and nothing that a guest answered is in it. */
export interface Told {
  readonly kind: NoticeKind
  /** Of the evening: yyyy-mm-dd. */
  readonly date: string
  readonly count: number
  /** Where to look. */
  readonly link: string
  /** Where to say that one wants to be told no longer. */
  readonly stop: string
}

const day = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' })
const dayText = (date: string): string => day.format(Date.parse(`${date}T12:00:00Z`)).replace(',', '')

const SUBJECTS: Readonly<Record<NoticeKind, string>> = {
  changed: 'An evening of yours has changed',
  asked: 'Something is asked of you',
  reply: 'An answer came',
  ahead: 'There is something to do tomorrow',
}

const things = (count: number, one: string, more: string): string => (count === 1 ? one : more.replace('#', String(count)))

const TEXTS: Readonly<Record<NoticeKind, (count: number, when: string) => string>> = {
  changed: (count, when) => `${things(count, 'Something was', '# things were')} changed of the evening on ${when}.`,
  asked: (count, when) => `${things(count, 'Something is', '# things are')} asked of you for the evening on ${when}.`,
  reply: (count, when) => `${things(count, 'An answer', '# answers')} came to your invitation for ${when}.`,
  ahead: (count, when) =>
    `${things(count, 'One thing is', '# things are')} for you to do tomorrow, ahead of the evening on ${when}.`,
}

export const noticeSubject = ({ kind, date }: Pick<Told, 'kind' | 'date'>): string => `${SUBJECTS[kind]}: ${dayText(date)}`

export const noticeText = ({ kind, date, count, link, stop }: Told): string =>
  [
    TEXTS[kind](count, dayText(date)),
    `Look at it here: ${link}`,
    `You asked to be told of this. To be told of it no longer: ${stop}`,
    'Tableward',
  ].join('\n\n')
