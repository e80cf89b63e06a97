import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import * as z from 'zod/mini'
import { Alerts, Beat, Command, type Fired, GuestsNews, Hello, OrderMessage, Outcome, type Sent, WIRE } from './wire.ts'

/**
 * Frames of our own on the socket.
 *   frame = varUint(type) body;  body of ack = varUint(frames);  body of all others = varString(JSON)
 * Each write gives a whole frame; each read takes a decoder that stands after the type and gives null for anything else.
 */
export const writeHello = (hello: Hello): Uint8Array => writeJson(WIRE.hello, hello)
export const readHello = (body: decoding.Decoder): Hello | null => readJson(body, Hello)
/** `sent`: the device's own clock as it goes, so that the server knows how long ago something was told. */
export const writeCommand = (command: Command, sent: number | null = null): Uint8Array =>
  writeJson(WIRE.command, sent === null ? command : { ...command, sent })
export const readCommand = (body: decoding.Decoder): Sent | null => {
  const frame = readJson(body, z.looseObject({ sent: z.optional(z.number()) }))
  if (!frame) return null
  const { sent = null, ...rest } = frame
  const command = Command.safeParse(rest)
  return command.success ? { command: command.data, sent } : null
}
export const writeOutcome = (outcome: Outcome): Uint8Array => writeJson(WIRE.outcome, outcome)
export const readOutcome = (body: decoding.Decoder): Outcome | null => readJson(body, Outcome)
export const writeOrder = (message: OrderMessage): Uint8Array => writeJson(WIRE.order, message)
export const readOrder = (body: decoding.Decoder): OrderMessage | null => readJson(body, OrderMessage)
export const writeBeat = (serverMs: number): Uint8Array => writeJson(WIRE.beat, { serverMs })
export const readBeat = (body: decoding.Decoder): { serverMs: number } | null => readJson(body, Beat)
export const writeGuests = (at: number): Uint8Array => writeJson(WIRE.guests, { at })
export const readGuests = (body: decoding.Decoder): { at: number } | null => readJson(body, GuestsNews)
export const writeAlerts = (alerts: readonly Fired[]): Uint8Array => writeJson(WIRE.alert, { alerts })
export const readAlerts = (body: decoding.Decoder): readonly Fired[] | null => readJson(body, Alerts)?.alerts ?? null

/** So many document frames of this connection are stored, counted from its start. */
export const writeAck = (frames: number): Uint8Array => {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, WIRE.ack)
  encoding.writeVarUint(encoder, frames)
  return encoding.toUint8Array(encoder)
}
export const readAck = (body: decoding.Decoder): number | null => attempt(() => decoding.readVarUint(body))

/** A frame's type, with the decoder standing after it. */
export const readType = (frame: Uint8Array): { readonly type: number; readonly body: decoding.Decoder } | null =>
  attempt(() => {
    const body = decoding.createDecoder(frame)
    return { type: decoding.readVarUint(body), body }
  })

const writeJson = (type: number, value: unknown): Uint8Array => {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, type)
  encoding.writeVarString(encoder, JSON.stringify(value))
  return encoding.toUint8Array(encoder)
}

const readJson = <T>(body: decoding.Decoder, schema: z.ZodMiniType<T>): T | null =>
  attempt(() => {
    const parsed = schema.safeParse(JSON.parse(decoding.readVarString(body)))
    return parsed.success && !decoding.hasContent(body) ? parsed.data : null
  })

/** Reading bytes from outside: whatever the decoder throws means that they are no frame of ours. */
const attempt = <T>(read: () => T): T | null => {
  try {
    return read()
  } catch {
    return null
  }
}
