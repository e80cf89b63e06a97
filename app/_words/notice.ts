import type { NoticeKind, NoticeWay } from '#server/notify/kinds.ts'

/** What one may be told of, as the end of "Tell me …". */
export const noticeKindText: Readonly<Record<NoticeKind, string>> = {
  changed: 'once a day, when somebody else has changed the evening',
  asked: 'when something is asked of me, or given to me',
  reply: 'when an answer comes',
  ahead: 'the day before, of what I have to do ahead',
}

export const noticeWayText: Readonly<Record<NoticeWay, string>> = { mail: 'by e-mail', push: 'on my devices' }
