import { dateAt, wallTimeOfMs } from '#lib/domain/time.ts'
import type { Settings } from '#server/env.ts'
import type { Backups } from '#server/live.ts'
import { startWorker } from '#server/worker-file.ts'
import { backupName, backupNames, type Erased, madeAt } from './copies.ts'
import { holdCopies } from './hold.ts'
import { type Answer, type Order, orderOf } from './orders.ts'

interface Parts {
  readonly dataFolder: string
  readonly databaseFile: string
  /** Where the copies before migrations lie. */
  readonly copies: string
  readonly settings: Settings['backup']
  /** A thread of its own unless said otherwise. */
  readonly carryOut?: (order: Order) => Promise<Answer>
}

export interface OpenBackups extends Backups {
  /** Makes the day's backup when its time has come and it is not there yet. Gives its file, or null. */
  daily(nowMs: number, zone: string): Promise<string | null>
}

export const openBackups = ({ dataFolder, databaseFile, copies, settings, carryOut = inThread }: Parts): OpenBackups => {
  const { folder, keep } = settings
  const done = async (order: Order): Promise<string | null> => {
    const answer = await holdCopies(dataFolder, () => carryOut(order))
    if (!answer.ok) throw new Error(answer.why)
    return answer.file
  }
  const make = (nowMs: number) => done({ kind: 'backup', from: databaseFile, folder, name: backupName(nowMs), keep })
  return {
    clean: async (erased: readonly Erased[]) => {
      await done({ kind: 'clean', folders: { copies, backups: folder }, erased })
    },
    daily: async (nowMs, zone) => (isDue(backupNames(folder).map(madeAt), settings.at, nowMs, zone) ? make(nowMs) : null),
  }
}

/** Once a day, from its time on; later the same day when nobody was there to make it. */
export const isDue = (made: readonly number[], at: string | null, nowMs: number, zone: string): boolean => {
  if (at === null) return false
  const today = dateAt(zone, nowMs)
  return wallTimeOfMs({ date: today, zone }, nowMs).time >= at && !made.some((ms) => dateAt(zone, ms) === today)
}

const inThread = (order: Order): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const thread = startWorker('backup/copy-worker.ts', { workerData: order })
    thread.once('message', resolve)
    thread.once('error', reject)
    thread.once('exit', (code) => reject(new Error(`the thread that makes copies has ended (${code})`)))
  })

/** In this thread, for programs that have nothing else to do. */
export const atOnce = async (order: Order): Promise<Answer> => orderOf(order)
