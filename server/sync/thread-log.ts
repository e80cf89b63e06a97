import { startWorker } from '#server/worker-file.ts'
import type { LogAnswer, LogRequest } from './log-worker.ts'
import type { StoredPlan, UpdateLog } from './update-log.ts'

type Question = LogRequest extends infer R ? (R extends unknown ? Omit<R, 'id'> : never) : never

/** The update log in a thread of its own, so that waiting for the disk holds up nobody. Its commits are grouped there. */
export const openThreadLog = (databaseFile: string): UpdateLog => {
  const worker = startWorker('sync/log-worker.ts', { workerData: { databaseFile } })
  const asked = new Map<number, { resolve: (value: LogAnswer) => void; reject: (cause: Error) => void }>()
  let last = 0
  let ended: Error | null = null
  const end = (cause: Error) => {
    ended ??= cause
    for (const { reject } of asked.values()) reject(cause)
    asked.clear()
  }
  worker.on('message', (answers: LogAnswer[]) => {
    for (const answer of answers) {
      asked.get(answer.id)?.resolve(answer)
      asked.delete(answer.id)
    }
  })
  worker.on('error', end)
  worker.on('exit', (code) => end(new Error(`the thread that stores plans has ended (${code})`)))

  const ask = async (question: Question): Promise<StoredPlan | number | null> => {
    if (ended) throw ended
    last += 1
    const id = last
    const answer = await new Promise<LogAnswer>((resolve, reject) => {
      asked.set(id, { resolve, reject })
      worker.postMessage({ id, ...question })
    })
    if (!answer.ok) throw new Error(answer.why)
    return answer.value
  }

  return {
    load: async (eveningId) => (await ask({ kind: 'load', eveningId })) as StoredPlan | null,
    create: async (eveningId, bytes) => {
      await ask({ kind: 'create', eveningId, bytes })
    },
    append: async (eveningId, entry) => (await ask({ kind: 'append', eveningId, entry })) as number,
    compact: async (eveningId, bytes, seq) => {
      await ask({ kind: 'compact', eveningId, bytes, seq })
    },
    async close() {
      if (!ended) await ask({ kind: 'close' })
      await worker.terminate()
    },
  }
}
