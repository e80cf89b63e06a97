import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Settings } from '#server/env.ts'
import { RefuseStart } from '#server/refuse-start.ts'

/** Opens the port; gives its number, which is of the system's choice for port 0. */
export const listen = (server: Server, { port, host }: Settings): Promise<number> =>
  new Promise((resolve, reject) => {
    const refuse = (cause: NodeJS.ErrnoException) => {
      const why = WHY[cause.code ?? '']
      reject(why ? new RefuseStart(why(port, host ?? ''), { cause }) : cause)
    }
    server.once('error', refuse)
    // Without a host Node takes every address of both families there are.
    server.listen({ port, ...(host === null ? {} : { host }) }, () => {
      server.off('error', refuse)
      resolve((server.address() as AddressInfo).port)
    })
  })

const WHY: Readonly<Record<string, (port: number, host: string) => string>> = {
  EADDRINUSE: (port) => `Another program listens on port ${port} already: stop it, or set PORT to another number.`,
  EACCES: (port) => `This user may not listen on port ${port}: set PORT to a number above 1023.`,
  EADDRNOTAVAIL: (_, host) => `HOST is ${host}, which is no address of this machine.`,
  ENOTFOUND: (_, host) => `HOST is ${host}, which is no address of this machine.`,
}
