import { expect, test } from 'vitest'
import { openCommands } from '#app/_sync/commands.ts'
import { openCopies } from '#app/_sync/copies.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { openUnsent } from '#app/_sync/unsent.ts'

const clock = (from = 1000) => {
  let time = from
  return () => {
    time += 1
    return time
  }
}

test('B1 an edit is unsent until everything is acknowledged, also after a reload', () => {
  const shelf = pageShelf()
  const first = openUnsent(shelf, 'unsent/', 'page-1')
  expect(first.any()).toBe(false)
  first.add()
  expect(first.any()).toBe(true)
  const second = openUnsent(shelf, 'unsent/', 'page-2')
  expect(second.any()).toBe(true)
  second.clear()
  expect(second.any()).toBe(false)
  expect(openUnsent(shelf, 'unsent/', 'page-3').any()).toBe(false)
})

test('B1 another page’s acknowledgement does not answer for edits made since it was opened', () => {
  const shelf = pageShelf()
  const offline = openUnsent(shelf, 'unsent/', 'page-1')
  offline.add()
  const online = openUnsent(shelf, 'unsent/', 'page-2')
  offline.add()
  online.clear()
  expect(openUnsent(shelf, 'unsent/', 'page-3').any()).toBe(true)
  expect(offline.any()).toBe(true)
})

test('B6 a command is kept until it is answered, in the order of asking, and across a reload', async () => {
  const shelf = pageShelf()
  const before = openCommands(shelf, 'command/', clock())
  const first = before.ask({ kind: 'claim', target: 'd1', cook: 'c1' })
  before.ask({ kind: 'claim', target: 'd2', cook: 'c1' })
  before.ask({ kind: 'release', target: 'd3', cook: 'c1' })
  expect(before.asking()).toEqual(
    new Map([
      ['d1', 'c1'],
      ['d2', 'c1'],
    ]),
  )
  before.answer({ op: first.command.op, kind: 'done' })
  expect(await first.answered).toEqual({ op: first.command.op, kind: 'done' })

  const after = openCommands(shelf, 'command/', clock(2000))
  expect(after.waiting()).toEqual(before.waiting())
  expect(after.waiting()).toMatchObject([{ target: 'd2' }, { target: 'd3' }])
})

test('B6 who asked before a reload is told of the refusal after it, once', () => {
  const shelf = pageShelf()
  openCommands(shelf, 'command/', clock()).ask({ kind: 'claim', target: 'd1', cook: 'c1' })
  const after = openCommands(shelf, 'command/', clock(2000))
  const [command] = after.waiting()
  const op = command?.op ?? ''
  after.answer({ op, kind: 'refused', why: { kind: 'taken', by: 'c2' } })
  expect(after.told()).toEqual([{ command, outcome: { op, kind: 'refused', why: { kind: 'taken', by: 'c2' } } }])
  expect(after.waiting()).toEqual([])
  after.hear(op)
  expect(after.told()).toEqual([])
  expect(openCommands(shelf, 'command/', clock(3000)).waiting()).toEqual([])
})

test('B6 a command that cannot be read is dropped', () => {
  const shelf = pageShelf()
  shelf.set('command/1', '{"kind":')
  shelf.set('command/2', '{"kind":"dance","op":"12345678"}')
  expect(openCommands(shelf, 'command/', clock()).waiting()).toEqual([])
  expect(shelf.keys('')).toEqual([])
})

test('operation ids are long, random and fit the wire', () => {
  const commands = openCommands(pageShelf(), 'command/', clock())
  const ops = Array.from({ length: 500 }, () => commands.ask({ kind: 'release', target: 'd1', cook: 'c1' }).command.op)
  expect(new Set(ops).size).toBe(500)
  for (const op of ops) expect(op).toMatch(/^[0-9a-f]{32}$/)
})

test('B5 a copy set aside stays where it is, and the next one is another database', () => {
  const shelf = pageShelf()
  const copies = openCopies(shelf, 'tableward/e1/u1/')
  expect(copies.database()).toBeNull()
  const first = copies.use('epoch-1')
  expect(openCopies(shelf, 'tableward/e1/u1/').database()).toBe(first)
  copies.setAside('epoch-2', true)
  expect(copies.epoch()).toBe('epoch-2')
  expect(copies.database()).not.toBe(first)
  expect(copies.aside()).toEqual([first])
  const second = copies.database()
  copies.setAside(null, false)
  expect(copies.epoch()).toBe('epoch-2')
  expect(copies.database()).not.toBe(second)
  expect(copies.aside()).toEqual([first])
})
