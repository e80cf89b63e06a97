import { networkInterfaces } from 'node:os'

/** Where the site is found: on this machine first, then for the other devices of the house. */
export const addresses = (host: string | null, port: number, publicAddress: string | null): readonly string[] => {
  const at = (name: string) => `http://${name.includes(':') ? `[${name}]` : name}:${port}`
  const here = host === null || isEverywhere(host)
  const names = here ? ['localhost', ...houseAddresses()] : [host]
  return [...(publicAddress ? [publicAddress] : []), ...names.map(at)]
}

const isEverywhere = (host: string): boolean => host === '0.0.0.0' || host === '::'

const houseAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((found) => found ?? [])
    .filter((found) => found.family === 'IPv4' && !found.internal)
    .map((found) => found.address)
