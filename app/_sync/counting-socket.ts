/** A frame's type, and a sync frame's kind, are single bytes: here their first two. */
const ANSWER = '0 1'
const UPDATE = '0 2'

/**
 * The socket class that the y-websocket client is given: it sees every frame on its way out.
 * - Frames that carry the document are counted by the caller, for the server acknowledges them by their number.
 * - Until the server's question is answered, single updates stay here: the answer brings everything the server lacks, and
 *   an update that runs ahead of it would leave a gap.
 */
export const countingSocket = (Socket: typeof WebSocket, onDocument: (socket: WebSocket) => void): typeof WebSocket =>
  class extends Socket {
    #answered = false

    override send(data: string | ArrayBufferLike | Blob | ArrayBufferView<ArrayBuffer>): void {
      const kind = data instanceof Uint8Array ? `${data[0]} ${data[1]}` : ''
      if (kind === ANSWER) this.#answered = true
      if (kind === UPDATE && !this.#answered) return
      super.send(data)
      if (kind === ANSWER || kind === UPDATE) onDocument(this)
    }
  }
