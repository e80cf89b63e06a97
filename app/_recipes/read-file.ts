import { fail, ok, type Result } from '#lib/domain/result.ts'

const MOST_BYTES = 2_000_000

/** The words of a file that a person chose, read in the browser; refused whole, with what to do, when it is no text. */
export const readFile = async (file: File): Promise<Result<string, string>> => {
  if (file.size > MOST_BYTES)
    return fail(`“${file.name}” is larger than 2 MB. Nothing of it was read: copy the recipe out of it and paste it.`)
  if (file.size === 0) return fail(`“${file.name}” is empty.`)
  const bytes = new Uint8Array(await file.arrayBuffer())
  const text = decode(bytes)
  if (text === null) return fail(`“${file.name}” is not text. Nothing of it was read: a .txt, .html or .json file can be.`)
  if (/^\s*\{/u.test(text) && text.slice(0, 4000).includes('"tableward/1"'))
    return fail(`“${file.name}” is a whole evening, not a recipe. Bring it in under “Plan an evening”, from a file.`)
  return ok(text)
}

/** UTF-8, or UTF-16 when it says so; null for what is neither. */
const decode = (bytes: Uint8Array): string | null => {
  const utf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)
  try {
    const text = new TextDecoder(utf16 ? (bytes[0] === 0xff ? 'utf-16le' : 'utf-16be') : 'utf-8', { fatal: true }).decode(bytes)
    return text.includes('\u0000') ? null : text
  } catch {
    return latin1(bytes)
  }
}

/** An old text file: the letters of western Europe in one byte each, and no control characters. */
const latin1 = (bytes: Uint8Array): string | null =>
  bytes.some((byte) => byte < 0x20 && byte !== 0x09 && byte !== 0x0a && byte !== 0x0d && byte !== 0x0c)
    ? null
    : new TextDecoder('windows-1252').decode(bytes)
