import { existsSync, readFileSync } from 'node:fs'
import webPush from 'web-push'
import { z } from 'zod'
import { writePrivately } from '#server/data-folder.ts'
import { RefuseStart } from '#server/refuse-start.ts'

const base64url = (bytes: number) =>
  z.string().refine((text) => /^[\w-]+$/.test(text) && Buffer.from(text, 'base64url').length === bytes)

/** By these a push service knows this server again (VAPID, RFC 8292). */
const Keys = z.strictObject({ publicKey: base64url(65), privateKey: base64url(32) })
export type Keys = z.infer<typeof Keys>

/** The keys of a data folder, made at its first start: with other keys every device would have to be asked again. */
export const keysOf = (folder: string): Keys => {
  const file = `${folder}/push-keys.json`
  if (!existsSync(file)) {
    const made = webPush.generateVAPIDKeys()
    writePrivately(file, `${JSON.stringify(made)}\n`)
    return made
  }
  const found = Keys.safeParse(parsed(readFileSync(file, 'utf8')))
  if (found.success) return found.data
  throw new RefuseStart(`${file} does not hold keys of Tableward: delete it, and devices that sleep are asked again.`)
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
