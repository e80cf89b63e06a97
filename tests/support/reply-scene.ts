import { GET, POST } from '#app/reply/[token]/route.ts'
import { printEvening } from '#lib/domain/parse.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { importEvening } from '#server/evenings/file.ts'
import type { GuestCommand } from '#server/guests/command.ts'
import { doGuestCommand } from '#server/guests/do-command.ts'
import { type GuestTable, tableOf } from '#server/guests/table.ts'
import { somebody } from './live-parts.ts'

export interface ReplyScene {
  readonly hostId: string
  readonly eveningId: string
  /** Carries out a host's command; throws when it is refused. */
  ask(command: GuestCommand): Promise<string | null>
  table(): Promise<GuestTable>
}

/** An evening with a host, in a database of its own; live parts must be open. */
export const replyScene = async (date = '2099-03-07'): Promise<ReplyScene> => {
  const host = await somebody('Mira')
  const made = await importEvening(host.id, printEvening({ ...demoEvening(date), guests: [] }))
  if (!made.ok) throw new Error(made.error.kind)
  const { eveningId } = made.value
  return {
    hostId: host.id,
    eveningId,
    ask: async (command) => {
      const done = await doGuestCommand(host.id, eveningId, command, async () => false)
      if (!done.ok) throw new Error(`${command.kind} was refused: ${JSON.stringify(done.error)}`)
      return done.value.kind === 'link' ? done.value.path : null
    },
    table: async () => {
      const table = await tableOf(host.id, eveningId)
      if (!table.ok) throw new Error(table.error.kind)
      return table.value
    },
  }
}

export interface Page {
  readonly status: number
  readonly text: string
  readonly location: string | null
}

const pageOf = async (answer: Response): Promise<Page> => ({
  status: answer.status,
  text: await answer.text(),
  location: answer.headers.get('location'),
})

const NOBODY = 'nobody'

const contextOf = (path: string) => ({ params: Promise.resolve({ token: /^\/reply\/([^?]*)/.exec(path)?.[1] ?? '' }) })

/** Asks for the page of a link as a browser would, from an address. */
export const getReply = async (path: string, from = NOBODY): Promise<Page> =>
  pageOf(await GET(new Request(`http://localhost${path}`, { headers: { 'x-forwarded-for': from } }), contextOf(path)))

export const postReply = async (path: string, form: URLSearchParams, from = NOBODY): Promise<Page> =>
  pageOf(
    await POST(
      new Request(`http://localhost${path}`, { method: 'POST', body: form, headers: { 'x-forwarded-for': from } }),
      contextOf(path),
    ),
  )
