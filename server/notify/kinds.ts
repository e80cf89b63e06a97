/** What somebody may want to be told of. */
export const NOTICE_KINDS = ['changed', 'asked', 'reply', 'ahead'] as const
export type NoticeKind = (typeof NOTICE_KINDS)[number]

export const NOTICE_WAYS = ['mail', 'push'] as const
export type NoticeWay = (typeof NOTICE_WAYS)[number]

/** That guests have answered is told to hosts alone. */
export const kindsFor = (role: 'host' | 'cook'): readonly NoticeKind[] =>
  NOTICE_KINDS.filter((kind) => kind !== 'reply' || role === 'host')

export const isKind = (text: string): text is NoticeKind => (NOTICE_KINDS as readonly string[]).includes(text)
export const isWay = (text: string): text is NoticeWay => (NOTICE_WAYS as readonly string[]).includes(text)
