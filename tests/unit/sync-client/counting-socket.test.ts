import { expect, test } from 'vitest'
import { countingSocket } from '#app/_sync/counting-socket.ts'

/** The least of a socket: it remembers what went out. */
class Wire {
  readonly out: unknown[] = []
  send(data: unknown): void {
    this.out.push(data)
  }
}

const QUESTION = Uint8Array.of(0, 0, 1)
const ANSWER = Uint8Array.of(0, 1, 1)
const UPDATE = Uint8Array.of(0, 2, 1)
const PRESENCE = Uint8Array.of(1, 1)
const COMMAND = Uint8Array.of(12, 1)

const opened = () => {
  let documents = 0
  const Counting = countingSocket(Wire as unknown as typeof WebSocket, () => {
    documents += 1
  })
  const socket = new Counting('ws://nowhere') as unknown as Wire
  return { socket, documents: () => documents }
}

test('an update that would run ahead of the answer to the server stays here: the answer brings it', () => {
  const { socket, documents } = opened()
  for (const frame of [QUESTION, UPDATE, ANSWER, UPDATE]) socket.send(frame)
  expect(socket.out).toEqual([QUESTION, ANSWER, UPDATE])
  expect(documents()).toBe(2)
})

test('B1 only frames that carry the document are counted', () => {
  const { socket, documents } = opened()
  for (const frame of [QUESTION, ANSWER, COMMAND, PRESENCE, 'text']) socket.send(frame)
  expect(socket.out).toEqual([QUESTION, ANSWER, COMMAND, PRESENCE, 'text'])
  expect(documents()).toBe(1)
})

test('B1 a frame is counted after it has gone out', () => {
  const sent: unknown[][] = []
  const Counting = countingSocket(Wire as unknown as typeof WebSocket, (socket) => {
    sent.push([...(socket as unknown as Wire).out])
  })
  const socket = new Counting('ws://nowhere') as unknown as Wire
  socket.send(ANSWER)
  expect(sent).toEqual([[ANSWER]])
})
