import { dateAt } from '#lib/domain/time.ts'
import { summaryOf } from '#server/guests/table.ts'
import type { Live, Push } from '#server/live.ts'
import { storedOrders } from '#server/planner/order-store.ts'
import { dueNow, type Scene } from './due.ts'
import { isKind, type NoticeKind } from './kinds.ts'
import { noticeSubject, noticeText } from './notice-words.ts'
import { unsubscribePath } from './unsubscribe.ts'

/** What of the server telling needs. */
export type Parts = Pick<Live, 'db' | 'rooms' | 'mail' | 'address'> & { readonly push: Pick<Push, 'tell'> }

/** Where to look. */
const PAGES: Readonly<Record<NoticeKind, string>> = { changed: 'order', asked: 'order', reply: 'guests', ahead: 'order' }

/** Tells everybody who wants it what is new for them. What could not be handed in is tried again the next time. */
export const tellDue = async (parts: Parts, nowMs: number): Promise<void> => {
  // One evening that cannot be read keeps nobody from being told of another.
  for (const [eveningId, notices] of await listeners(parts, nowMs))
    await tellOf(parts, eveningId, notices, nowMs).catch((why: unknown) => console.error('nobody was told of an evening', why))
}

const tellOf = async (parts: Parts, eveningId: string, notices: readonly Notice[], nowMs: number): Promise<void> => {
  const scene = await sceneOf(parts, eveningId, Math.min(...notices.map(({ toldAt }) => toldAt.getTime())), nowMs)
  for (const notice of notices) {
    const { kind, memberId, member, toldAt } = notice
    if (!isKind(kind) || (kind === 'reply' && member.role !== 'host')) continue
    const count = dueNow(scene, { memberId, cook: member.cook, kind, toldMs: toldAt.getTime() }, nowMs)
    if (count > 0) await tell(parts, notice, kind, scene.evening.date, count, nowMs)
  }
}

/** Whoever wants to be told something of an evening that is not over, by evening. */
const listeners = async ({ db }: Parts, nowMs: number) => {
  const notices = await db.notice.findMany({
    where: { member: { revokedAt: null, evening: { deletedAt: null } } },
    include: {
      member: {
        select: {
          eveningId: true,
          role: true,
          cook: true,
          user: { select: { email: true } },
          evening: { select: { summary: true } },
        },
      },
    },
  })
  const found = new Map<string, typeof notices>()
  for (const notice of notices) {
    const { eveningId, evening } = notice.member
    const { date, zone } = summaryOf(evening.summary)
    if (date >= dateAt(zone, nowMs)) found.set(eveningId, [...(found.get(eveningId) ?? []), notice])
  }
  return found
}
type Notice = Awaited<ReturnType<typeof listeners>> extends Map<string, (infer N)[]> ? N : never

/** What happens while letters go out is told the next time, and not twice. */
const sceneOf = async ({ db, rooms }: Parts, eveningId: string, sinceMs: number, nowMs: number): Promise<Scene> => {
  const since = { gt: new Date(sinceMs), lte: new Date(nowMs) }
  const [evening, changes, answers, kept] = await Promise.all([
    rooms.read(eveningId),
    db.planChange.findMany({ where: { eveningId, at: since } }),
    db.invitation.findMany({ where: { eveningId, answeredAt: since }, select: { answeredAt: true } }),
    storedOrders(db).load(eveningId),
  ])
  return {
    evening,
    changes: changes.map(({ at, ...change }) => ({ ...change, atMs: at.getTime() })),
    answers: answers.flatMap(({ answeredAt }) => answeredAt?.getTime() ?? []),
    cues: kept?.order.cues ?? [],
  }
}

/** Noted first, so that a server that dies in between tells nothing twice; taken back when it was not handed in. */
const tell = async (
  parts: Parts,
  notice: Notice,
  kind: NoticeKind,
  date: string,
  count: number,
  nowMs: number,
): Promise<void> => {
  const { memberId, by, toldAt, member } = notice
  const { db, mail, push, address } = parts
  const path = `/evenings/${member.eveningId}/${PAGES[kind]}`
  const where = { memberId, kind, by }
  await db.notice.updateMany({ where, data: { toldAt: new Date(nowMs) } })
  if (by === 'push') return push.tell(memberId, { kind, path })
  const { email } = member.user
  if (mail === null || !email) return
  const stop = `${address}${unsubscribePath(memberId, kind)}`
  const sent = await mail.send({
    to: email,
    subject: noticeSubject({ kind, date }),
    text: noticeText({ kind, date, count, link: `${address}${path}`, stop }),
    // RFC 2369 and 8058: the reader's own button, which posts this.
    headers: { 'List-Unsubscribe': `<${stop}>`, 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' },
  })
  if (!sent) await db.notice.updateMany({ where, data: { toldAt } })
}
