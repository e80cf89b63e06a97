import { parentPort, workerData } from 'node:worker_threads'
import { orderOf } from './orders.ts'

// One order, done in a thread of its own: the server goes on serving meanwhile.
if (!parentPort) throw new Error('copy-worker.ts runs in a worker thread')
parentPort.postMessage(orderOf(workerData))
