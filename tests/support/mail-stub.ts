import { type AddressInfo, createServer, type Server, type Socket } from 'node:net'

/** A mail server that speaks as much of SMTP (RFC 5321) as a letter needs, and keeps what it is given. */
export interface MailStub {
  /** smtp://127.0.0.1:PORT */
  readonly address: string
  readonly letters: readonly { readonly from: string; readonly to: string; readonly text: string }[]
  close(): Promise<void>
}

/** `refused`: letters to this address are not taken. */
export const openMailStub = async (refused: string): Promise<MailStub> => {
  const letters: { from: string; to: string; text: string }[] = []
  const server: Server = createServer((socket: Socket) => {
    let waiting = ''
    let letter = { from: '', to: '', text: '' }
    let inText = false
    const say = (line: string) => socket.write(`${line}\r\n`)
    const hear = (line: string) => {
      if (inText) {
        if (line !== '.') letter.text += `${line.replace(/^\./, '')}\n`
        else {
          inText = false
          letters.push(letter)
          letter = { from: '', to: '', text: '' }
          say('250 taken')
        }
        return
      }
      const address = /<(.*)>/.exec(line)?.[1] ?? ''
      if (/^(EHLO|HELO)/i.test(line)) say('250 stub')
      else if (/^MAIL FROM/i.test(line)) {
        letter.from = address
        say('250 yes')
      } else if (/^RCPT TO/i.test(line)) {
        letter.to = address
        say(address === refused ? '550 nobody here' : '250 yes')
      } else if (/^DATA/i.test(line)) {
        inText = true
        say('354 go on')
      } else if (/^QUIT/i.test(line)) socket.end('221 bye\r\n')
      else say('250 yes')
    }
    socket.on('error', () => socket.destroy())
    socket.on('data', (chunk) => {
      const lines = (waiting + chunk.toString()).split('\r\n')
      waiting = lines.pop() ?? ''
      for (const line of lines) hear(line)
    })
    say('220 stub')
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return {
    address: `smtp://127.0.0.1:${(server.address() as AddressInfo).port}`,
    letters,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  }
}
