import 'fake-indexeddb/auto'
import { expect, test, vi } from 'vitest'
import * as Y from 'yjs'
import { openKeeping } from '#app/_sync/keeping.ts'
import { realTimers } from '#app/_sync/timers.ts'

const open = async (doc: Y.Doc) => {
  const keeping = await openKeeping('plan', doc, realTimers)
  if (!keeping) throw new Error('nothing is kept')
  return keeping
}
const said = (doc: Y.Doc) => doc.getMap('said').toJSON()

test('B2 what is edited before, while and after the stored copy is read is in it afterwards, and nothing of it is lost', async () => {
  const first = new Y.Doc()
  first.getMap('said').set('before', 1)
  const opening = open(first)
  first.getMap('said').set('while', 2)
  const keeping = await opening
  first.getMap('said').set('after', 3)
  keeping.set('end', 'of what is written')
  await vi.waitFor(async () => expect(await keeping.get('end')).toBe('of what is written'))
  keeping.close()

  const second = new Y.Doc()
  second.getMap('said').set('here', 4)
  const updates: unknown[] = []
  const again = await open(second)
  second.on('update', (_update, origin) => updates.push(origin))
  expect(said(second)).toEqual({ before: 1, while: 2, after: 3, here: 4 })
  second.getMap('said').set('later', 5)
  expect(updates).toEqual([null])
  again.set('end', 'of the second')
  await vi.waitFor(async () => expect(await again.get('end')).toBe('of the second'))
  again.close()

  const third = new Y.Doc()
  const last = await open(third)
  expect(said(third)).toEqual({ before: 1, while: 2, after: 3, here: 4, later: 5 })
  last.close()
})
