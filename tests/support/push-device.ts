import { createDecipheriv, createECDH, type ECDH, hkdfSync, randomBytes } from 'node:crypto'

/** A browser, with the keys that it keeps to itself. */
export const pushDevice = (
  name: string,
): { readonly ecdh: ECDH; readonly auth: Buffer; readonly said: object; readonly endpoint: string } => {
  const ecdh = createECDH('prime256v1')
  const point = ecdh.generateKeys()
  const auth = randomBytes(16)
  const endpoint = `https://push.example/${name}`
  return {
    ecdh,
    auth,
    endpoint,
    said: {
      endpoint,
      expirationTime: null,
      keys: { p256dh: point.toString('base64url'), auth: auth.toString('base64url') },
    },
  }
}

/** What a browser reads of a message: written from RFC 8188 (2.1) and RFC 8291 (3.4), apart from the library that seals it. */
export const unsealed = (body: Buffer, { ecdh, auth }: Pick<ReturnType<typeof pushDevice>, 'ecdh' | 'auth'>): string => {
  const salt = body.subarray(0, 16)
  const server = body.subarray(21, 21 + body.readUInt8(20))
  const sealed = body.subarray(21 + server.length)
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), ecdh.getPublicKey(), server])
  const ikm = Buffer.from(hkdfSync('sha256', ecdh.computeSecret(server), auth, info, 32))
  const part = (name: string, bytes: number) =>
    Buffer.from(hkdfSync('sha256', ikm, salt, Buffer.from(`Content-Encoding: ${name}\0`), bytes))
  const open = createDecipheriv('aes-128-gcm', part('aes128gcm', 16), part('nonce', 12))
  open.setAuthTag(sealed.subarray(-16))
  const plain = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()])
  return plain.subarray(0, plain.lastIndexOf(2)).toString()
}
