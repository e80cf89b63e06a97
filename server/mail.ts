import { createTransport } from 'nodemailer'
import type { Settings } from './env.ts'

export interface Written {
  readonly to: string
  readonly subject: string
  readonly text: string
  /** More lines above it, by name. */
  readonly headers?: Readonly<Record<string, string>>
}

/** Sends letters by the mail server that was set. */
export interface Mail {
  /** Whether the mail server took it. */
  send(letter: Written): Promise<boolean>
}

/** How long the mail server may keep us waiting, in milliseconds. */
const PATIENCE = 10_000

/** null when no mail server is set: letters are then copied by hand. */
export const openMail = ({ mail }: Pick<Settings, 'mail'>): Mail | null => {
  if (mail === null) return null
  const transport = createTransport({
    url: mail.server,
    connectionTimeout: PATIENCE,
    greetingTimeout: PATIENCE,
    socketTimeout: PATIENCE,
    // What a letter says is no file of this machine and no page of another one.
    disableFileAccess: true,
    disableUrlAccess: true,
  })
  return {
    send: async ({ to, subject, text, headers }) => {
      try {
        const { accepted } = await transport.sendMail({ from: mail.from, to, subject, text, headers: { ...headers } })
        return accepted.length > 0
      } catch (cause) {
        // Neither the address nor the letter: there is a link in it.
        console.error('a letter could not be sent:', codeOf(cause))
        return false
      }
    },
  }
}

const codeOf = (cause: unknown): string => (cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown')
