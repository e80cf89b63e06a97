import { parentPort, receiveMessageOnPort, workerData } from 'node:worker_threads'
import { type Append, type Appended, openPlanTables } from './plan-tables.ts'
import { reasonOf } from './reason.ts'
import type { StoredPlan } from './update-log.ts'

/** What the thread is asked; each is answered once, under its number. */
export type LogRequest = { readonly id: number } & (
  | ({ readonly kind: 'append' } & Append)
  | { readonly kind: 'load'; readonly eveningId: string }
  | { readonly kind: 'create'; readonly eveningId: string; readonly bytes: Uint8Array }
  | { readonly kind: 'compact'; readonly eveningId: string; readonly bytes: Uint8Array; readonly seq: number }
  | { readonly kind: 'close' }
)
export type LogAnswer = { readonly id: number } & (
  | { readonly ok: true; readonly value: StoredPlan | number | null }
  | { readonly ok: false; readonly why: string }
)

if (!parentPort) throw new Error('log-worker.ts runs in a worker thread')
const port = parentPort
const tables = openPlanTables((workerData as { databaseFile: string }).databaseFile)

/** Everything that arrived while the last commit was on its way to the disk: one commit for all of it. */
const waiting = (first: LogRequest): LogRequest[] => {
  const requests = [first]
  for (let next = receiveMessageOnPort(port); next; next = receiveMessageOnPort(port)) requests.push(next.message)
  return requests
}

const answerOf = (id: number, appended: Appended): LogAnswer =>
  appended.ok ? { id, ok: true, value: appended.seq } : { id, ok: false, why: appended.why }

const handle = (request: Exclude<LogRequest, { kind: 'append' }>): LogAnswer => {
  const { id } = request
  try {
    if (request.kind === 'load') return { id, ok: true, value: tables.load(request.eveningId) }
    if (request.kind === 'create') tables.create(request.eveningId, request.bytes)
    if (request.kind === 'compact') tables.compact(request.eveningId, request.bytes, request.seq)
    if (request.kind === 'close') tables.close()
    return { id, ok: true, value: null }
  } catch (cause) {
    return { id, ok: false, why: reasonOf(cause) }
  }
}

port.on('message', (first: LogRequest) => {
  let group: (LogRequest & { kind: 'append' })[] = []
  const answers: LogAnswer[] = []
  const commit = () => {
    if (group.length === 0) return
    const appended = tables.append(group)
    for (const [index, { id }] of group.entries())
      answers.push(answerOf(id, appended[index] ?? { ok: false, why: 'not answered' }))
    group = []
  }
  for (const request of waiting(first)) {
    if (request.kind === 'append') group.push(request)
    else {
      commit()
      answers.push(handle(request))
    }
  }
  commit()
  port.postMessage(answers)
})
