import { hash, verify } from '@node-rs/argon2'

// argon2id as OWASP's cheat sheet has it: 19 MiB, two passes, one lane.
const COST = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 }

export const hashPassword = (password: string): Promise<string> => hash(password, COST)

let unknownHash: Promise<string> | null = null

/** Whether the password is right. `null` (no such account) takes as long as a wrong password. */
export const passwordIs = async (stored: string | null, password: string): Promise<boolean> => {
  unknownHash ??= hashPassword('nobody has this password')
  const right = await verify(stored ?? (await unknownHash), password)
  return stored !== null && right
}
