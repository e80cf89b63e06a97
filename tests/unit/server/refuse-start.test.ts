import { expect, test } from 'vitest'
import { asRefusal, RefuseStart } from '#server/refuse-start.ts'

const of = (message: string, code?: string): unknown =>
  asRefusal('/data', Object.assign(new Error(message), code ? { code } : {}))

test('A3 a full disk, a folder one may not write and a damaged database are told with what to do', () => {
  for (const [message, code, says] of [
    ['ENOSPC: no space left on device, write', 'ENOSPC', 'the disk is full: make room'],
    // As they come from Prisma's engine, and from the thread that stores plans.
    ['SQLITE_FULL: database or disk is full\n   0: sql_schema_connector', undefined, 'the disk is full: make room'],
    ['database or disk is full', undefined, 'the disk is full: make room'],
    ["EACCES: permission denied, open '/data/secret.new'", 'EACCES', 'may not be written by this user'],
    ['ConnectionFailed("Unable to open connection to local database /data/lock.db: 14")', '', 'cannot be opened'],
    ['file is not a database', 'SQLITE_NOTADB', 'is not a database: put back a copy'],
    ['database disk image is malformed', 'SQLITE_CORRUPT_INDEX', 'is damaged: put back a copy'],
  ] as const) {
    const refusal = of(message, code)
    expect(refusal).toBeInstanceOf(RefuseStart)
    expect(String(refusal)).toContain('/data')
    expect(String(refusal)).toContain(says)
  }
})

test('A3 anything else is a bug and stays one', () => {
  const bug = new TypeError('undefined is not a function')
  expect(asRefusal('/data', bug)).toBe(bug)
})
