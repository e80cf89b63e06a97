import { AlertKind, type Fired } from '#lib/plan/wire.ts'
import type { PrismaClient } from '#prisma/client/client.ts'

/** What has rung, so that it rings once, also after a restart. */
export interface AlertStore {
  load(eveningId: string): Promise<readonly Fired[]>
  save(eveningId: string, fired: readonly Fired[]): Promise<void>
  /** Forgets what rang before that moment, of all evenings. */
  forget(beforeMs: number): Promise<void>
}

export const storedAlerts = (db: PrismaClient): AlertStore => ({
  async load(eveningId) {
    const rows = await db.nightAlert.findMany({ where: { eveningId }, orderBy: [{ firedAt: 'asc' }, { due: 'asc' }] })
    return rows.map(({ id, kind, cooks, step, batch, touch, course, due, firedAt }) => ({
      id,
      at: due.getTime(),
      firedAt: firedAt.getTime(),
      kind: AlertKind.parse(kind),
      cooks: JSON.parse(cooks) as string[],
      ...(step === null ? {} : { step }),
      ...(batch === null ? {} : { batch }),
      ...(touch === null ? {} : { touch: JSON.parse(touch) as 'out' | number }),
      ...(course === null ? {} : { course }),
    }))
  },
  async save(eveningId, fired) {
    await db.nightAlert.createMany({
      data: fired.map(({ id, at, firedAt, kind, cooks, step, batch, touch, course }) => ({
        eveningId,
        id,
        kind,
        cooks: JSON.stringify(cooks),
        step: step ?? null,
        batch: batch ?? null,
        touch: touch === undefined ? null : JSON.stringify(touch),
        course: course ?? null,
        due: new Date(at),
        firedAt: new Date(firedAt),
      })),
    })
  },
  async forget(beforeMs) {
    await db.nightAlert.deleteMany({ where: { firedAt: { lt: new Date(beforeMs) } } })
  },
})
