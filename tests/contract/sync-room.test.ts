import { describe, expect, test } from 'vitest'
import type * as Y from 'yjs'
import { addStep } from '#lib/plan/commands/add.ts'
import { moveDish } from '#lib/plan/commands/move.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { renameDish, setEvening, setFields } from '#lib/plan/commands/set.ts'
import { readGuests, readType } from '#lib/plan/frames.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { CLOSE, WIRE } from '#lib/plan/wire.ts'
import { type Device, EVENING, type LoopbackRoom, loopbackRoom, turn } from '#tests/support/loopback-room.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const lamb = readEvening('a-lamb')
const [dish1] = lamb.dishes
const [step1, step2] = lamb.steps
const [kim, other] = lamb.cooks
if (!dish1 || !step1 || !step2 || !kim || !other) throw new Error('the evening is too small')

const room = async (): Promise<LoopbackRoom & { host: Device; cook: Device }> => {
  const opened = await loopbackRoom(lamb)
  const host = opened.device('m-host', 'host', kim.id)
  const cook = opened.device('m-cook', 'cook', other.id)
  opened.connect(host)
  opened.connect(cook)
  await opened.settle()
  return Object.assign(opened, { host, cook })
}
const nameOf = (device: Device) => readPlan(device.client.doc).evening.dishes.find((dish) => dish.id === dish1.id)?.name
const claimsOf = (device: Device) => readPlan(device.client.doc).evening.claims
const { order: _order, ...plainStep } = step1

describe('coming in', () => {
  test('R20 hello is the first frame, the document follows, and every document frame is acknowledged', async () => {
    const { host, cook } = await room()
    expect(host.client.heard[0]).toBe(WIRE.hello)
    expect(host.client.hello).toMatchObject({ epoch: 'epoch-1', layout: 1, member: 'm-host', role: 'host', cook: kim.id })
    expect(readPlan(cook.client.doc).evening.dishes).toHaveLength(lamb.dishes.length)
    expect(host.client.sent).toBe(1)
    expect(host.client.acked).toBe(1)
  })

  test('I17 hosts are told that something about the guests is new, without a word of it; cooks are not', async () => {
    const opened = await room()
    const { host, cook } = opened
    const heard = () => [host, cook].map(({ client }) => client.heard.filter((type) => type === WIRE.guests).length)
    expect(heard()).toEqual([0, 0])
    opened.rooms().tellGuests(EVENING)
    opened.rooms().tellGuests('another-evening')
    await turn()
    const frame = readType(host.line?.toClient.at(-1) ?? new Uint8Array())
    expect(frame && [frame.type, readGuests(frame.body)]).toEqual([WIRE.guests, { at: opened.clock.now() }])
    await opened.settle()
    expect(heard()).toEqual([1, 0])
  })

  test('R20 nothing is shown or acknowledged before it is stored', async () => {
    const opened = await room()
    const { host, cook, log } = opened
    renameDish(host.client.doc, dish1.id, 'Not stored yet')
    while (host.line?.toServer.length) host.line.deliverToServer()
    await turn()
    expect(log.waiting).toBe(1)
    expect(host.line?.toClient).toEqual([])
    expect(cook.line?.toClient).toEqual([])
    expect((await opened.rooms().read(EVENING)).dishes[0]?.name).toBe(dish1.name)
    log.commit()
    await turn()
    expect(cook.line?.toClient).toHaveLength(1)
    expect(host.line?.toClient).toHaveLength(1)
    await opened.settle()
    expect(nameOf(cook)).toBe('Not stored yet')
    expect(host.client.acked).toBe(host.client.sent)
  })

  test('R20 an unknown evening is closed as gone, and a plan that cannot be read is never replaced', async () => {
    const opened = await room()
    const lost = opened.device('m-lost')
    Object.assign(lost, { seat: { ...lost.seat, eveningId: 'nowhere' } })
    opened.connect(lost)
    await opened.settle()
    expect(lost.closedWith).toBe(CLOSE.gone)
    await expect(opened.rooms().create(EVENING, lamb)).rejects.toThrow('has a plan already')
    await expect(opened.rooms().create('nowhere', lamb)).rejects.toThrow('no evening')

    opened.log.add('broken')
    await opened.log.create('broken', new Uint8Array([1, 2, 3, 4]))
    const unlucky = opened.device('m-unlucky')
    Object.assign(unlucky, { seat: { ...unlucky.seat, eveningId: 'broken' } })
    opened.connect(unlucky)
    await opened.settle()
    expect(unlucky.closedWith).toBe(1011)
    expect(opened.logged.join()).toContain('cannot be read')
    expect((await opened.log.load('broken'))?.updates).toEqual([new Uint8Array([1, 2, 3, 4])])
  })

  test('R20 the plan is told when somebody comes into an empty room and after changes, at most every 100 ms', async () => {
    const opened = await room()
    opened.clock.advance(0)
    expect(opened.plans).toHaveLength(1)
    for (let n = 0; n < 5; n += 1) {
      renameDish(opened.host.client.doc, dish1.id, `Name ${n}`)
      await opened.settle()
    }
    expect(opened.plans).toHaveLength(1)
    opened.clock.advance(100)
    expect(opened.plans.map((plan) => plan.dishes[0]?.name)).toEqual([dish1.name, 'Name 4'])
    opened.cut(opened.host)
    expect(opened.empties).toEqual([])
    opened.cut(opened.cook)
    expect(opened.empties).toEqual([EVENING])
  })

  test('R20 a newcomer is greeted with the running order, but never with an older one than was sent meanwhile', async () => {
    const answers: ((hash: string) => void)[] = []
    const opened = await loopbackRoom(lamb, {
      greet: () => new Promise((resolve) => answers.push((hash) => resolve({ kind: 'planning', hash }))),
    })
    const host = opened.device('m-host', 'host')
    opened.connect(host)
    await opened.settle()
    opened.rooms().sendOrder(EVENING, { kind: 'planning', hash: 'newer' })
    await opened.settle()
    answers[0]?.('older')
    await opened.settle()
    expect(host.client.orders).toEqual([{ kind: 'planning', hash: 'newer' }])
    const late = opened.device('m-late')
    opened.connect(late)
    await opened.settle()
    answers[1]?.('newer')
    await opened.settle()
    expect(late.client.orders).toEqual([{ kind: 'planning', hash: 'newer' }])
  })
})

describe('a room that is held', () => {
  test('K20 it is told of without a socket, is never empty while it is held, and comes back by itself after the disk failed', async () => {
    const opened = await loopbackRoom(lamb)
    opened.rooms().hold(EVENING)
    await opened.settle()
    opened.clock.advance(0)
    expect(opened.plans).toHaveLength(1)
    const host = opened.device('m-host', 'host', kim.id)
    opened.connect(host)
    await opened.settle()
    renameDish(host.client.doc, dish1.id, 'Told and gone')
    while (host.line?.toServer.length) host.line.deliverToServer()
    opened.cut(host)
    await opened.settle()
    opened.clock.advance(100)
    expect(opened.plans.at(-1)?.dishes[0]?.name).toBe('Told and gone')
    expect(opened.empties).toEqual([])

    opened.connect(host)
    await opened.settle()
    opened.log.setFull(true)
    renameDish(host.client.doc, dish1.id, 'Not stored')
    await opened.settle()
    expect(host.closedWith).toBe(4500)
    opened.log.setFull(false)
    const told = opened.plans.length
    opened.clock.advance(1000)
    await opened.settle()
    opened.clock.advance(100)
    expect(opened.plans.slice(told).map((plan) => plan.dishes[0]?.name)).toEqual(['Told and gone'])

    opened.rooms().release(EVENING)
    await opened.settle()
    expect(opened.empties).toEqual([EVENING])
  })

  test('K20 an evening that is closed to everybody is let go, and that is told', async () => {
    const opened = await loopbackRoom(lamb)
    const closed: string[] = []
    opened.rooms().onClosed((eveningId) => closed.push(eveningId))
    opened.rooms().hold(EVENING)
    await opened.settle()
    opened.rooms().closeEvening(EVENING, CLOSE.gone)
    await opened.settle()
    opened.clock.advance(100)
    expect(closed).toEqual([EVENING])
    expect(opened.empties).toEqual([EVENING])
    expect(opened.plans).toEqual([])
  })
})

describe('editing together', () => {
  test('R21 what the commands write is admitted: adding, moving, removing, undoing and redoing', async () => {
    const opened = await room()
    const { host, cook } = opened
    const undo = openUndo(cook.client.doc)
    const edits: ((doc: Y.Doc) => unknown)[] = [
      (doc) => addStep(doc, { ...plainStep, id: 'new-step', dish: dish1.id, after: [] }, { kind: 'first' }),
      (doc) => setFields(doc, 'steps', 'new-step', { does: 'Chop them 😀 finely' }),
      (doc) => moveDish(doc, dish1.id, lamb.courses[1]?.id ?? '', { kind: 'first' }),
      (doc) => remove(doc, 'steps', step2.id),
      (doc) => setFields(doc, 'dishes', dish1.id, { portions: 4, notes: 'Two\nlines' }),
      (doc) => setFields(doc, 'cooks', other.id, { pace: 1.2 }),
    ]
    for (const edit of edits) {
      undo.edit(edit)
      await opened.settle()
    }
    expect(readPlan(host.client.doc).evening.steps.find((step) => step.id === 'new-step')?.does).toBe('Chop them 😀 finely')
    for (const _ of edits) undo.undo()
    await opened.settle()
    expect(cook.closedWith).toBeNull()
    expect(readPlan(host.client.doc).evening).toEqual(readPlan(cook.client.doc).evening)
    expect(readPlan(host.client.doc).evening.steps).toHaveLength(lamb.steps.length)
    for (const _ of edits) undo.redo()
    await opened.settle()
    expect(cook.closedWith).toBeNull()
    expect(readPlan(host.client.doc)).toEqual(readPlan(cook.client.doc))
    expect(readPlan(host.client.doc).evening.steps.find((step) => step.id === 'new-step')?.does).toBe('Chop them 😀 finely')
    expect(opened.logged).toEqual([])
  })

  test('R21 the host may change the evening itself', async () => {
    const opened = await room()
    setEvening(opened.host.client.doc, { covers: 11 })
    await opened.settle()
    expect(readPlan(opened.cook.client.doc).evening.covers).toBe(11)
  })

  test('R22 two devices of one member, and offline edits under an old client id after a reload, are let in', async () => {
    const opened = await room()
    const { host, cook } = opened
    const phone = opened.device('m-cook', 'cook', other.id)
    opened.connect(phone)
    await opened.settle()
    opened.cut(cook)
    const oldId = cook.client.doc.clientID
    renameDish(cook.client.doc, dish1.id, 'Edited offline')
    cook.client.reload()
    expect(cook.client.doc.clientID).not.toBe(oldId)
    setFields(cook.client.doc, 'dishes', dish1.id, { portions: 3 })
    cook.client.reload()
    setFields(phone.client.doc, 'dishes', dish1.id, { yields: 5 })
    await opened.settle()
    opened.connect(cook)
    await opened.settle()
    expect(cook.closedWith).toBeNull()
    for (const device of [host, cook, phone])
      expect(readPlan(device.client.doc).evening.dishes[0]).toMatchObject({ name: 'Edited offline', portions: 3, yields: 5 })
    const owners = new Map((await opened.log.load(EVENING))?.owners)
    expect(owners.get(oldId)).toBe('m-cook')
  })

  test('R22 a frame that builds on a lost one is not stored: its sender comes again and nothing is missing', async () => {
    const opened = await room()
    const { host, cook } = opened
    renameDish(cook.client.doc, dish1.id, 'First')
    cook.line?.toServer.pop()
    setFields(cook.client.doc, 'dishes', dish1.id, { portions: 2 })
    await opened.settle()
    expect(cook.closedWith).toBe(4500)
    expect(nameOf(host)).toBe(dish1.name)
    opened.connect(cook)
    await opened.settle()
    expect(nameOf(host)).toBe('First')
    expect(cook.client.acked).toBe(cook.client.sent)
  })
})

describe('claims', () => {
  test('R3 the second to claim a step is told who has it; asked again, a command is answered again and not done twice', async () => {
    const opened = await room()
    const { host, cook } = opened
    cook.client.ask({ op: 'op-cook-1', kind: 'claim', target: step1.id, cook: other.id })
    await opened.settle()
    host.client.ask({ op: 'op-host-1', kind: 'claim', target: step1.id, cook: kim.id })
    await opened.settle()
    expect(cook.client.outcomes.get('op-cook-1')).toEqual({ op: 'op-cook-1', kind: 'done' })
    const taken = { op: 'op-host-1', kind: 'refused', why: { kind: 'taken', by: other.id } }
    expect(host.client.outcomes.get('op-host-1')).toEqual(taken)
    for (const device of [host, cook]) expect(claimsOf(device)).toEqual([{ target: step1.id, cook: other.id }])

    cook.client.ask({ op: 'op-cook-2', kind: 'release', target: step1.id, cook: other.id })
    await opened.settle()
    expect(claimsOf(host)).toEqual([])
    await opened.kill()
    opened.connect(host)
    opened.connect(cook)
    host.client.ask({ op: 'op-host-1', kind: 'claim', target: step1.id, cook: kim.id })
    cook.client.ask({ op: 'op-cook-1', kind: 'claim', target: step1.id, cook: other.id })
    host.client.ask({ op: 'op-cook-2', kind: 'release', target: step1.id, cook: other.id })
    await opened.settle()
    expect(host.client.outcomes.get('op-host-1')).toEqual(taken)
    expect(cook.client.outcomes.get('op-cook-1')).toEqual({ op: 'op-cook-1', kind: 'done' })
    expect(host.client.outcomes.get('op-cook-2')).toMatchObject({ why: { kind: 'not-yours' } })
    expect(claimsOf(cook)).toEqual([])
  })

  test('R3 a cook speaks for themself and the host for everybody; different targets may have different cooks', async () => {
    const opened = await room()
    const { host, cook } = opened
    cook.client.ask({ op: 'op-00001', kind: 'claim', target: step1.id, cook: kim.id })
    cook.client.ask({ op: 'op-00002', kind: 'claim', target: 'nothing', cook: other.id })
    cook.client.ask({ op: 'op-00003', kind: 'claim', target: step1.id, cook: 'nobody' })
    cook.client.ask({ op: 'op-00004', kind: 'claim', target: dish1.id, cook: other.id, also: [kim.id] })
    await opened.settle()
    host.client.ask({ op: 'op-00005', kind: 'claim', target: step1.id, cook: kim.id })
    host.client.ask({ op: 'op-00006', kind: 'reassign', target: dish1.id, from: kim.id, cook: kim.id })
    await opened.settle()
    host.client.ask({ op: 'op-00007', kind: 'reassign', target: dish1.id, from: other.id, cook: kim.id })
    cook.client.ask({ op: 'op-00008', kind: 'release', target: dish1.id, cook: other.id })
    await opened.settle()
    const why = (device: Device, op: string) => {
      const outcome = device.client.outcomes.get(op)
      return outcome?.kind === 'refused' ? outcome.why : outcome?.kind
    }
    expect(why(cook, 'op-00001')).toEqual({ kind: 'not-yours' })
    expect(why(cook, 'op-00002')).toEqual({ kind: 'unknown-target' })
    expect(why(cook, 'op-00003')).toEqual({ kind: 'unknown-cook' })
    expect(why(cook, 'op-00004')).toBe('done')
    expect(why(host, 'op-00005')).toBe('done')
    expect(why(host, 'op-00006')).toEqual({ kind: 'taken', by: other.id })
    expect(why(host, 'op-00007')).toBe('done')
    expect(why(cook, 'op-00008')).toEqual({ kind: 'taken', by: kim.id })
    expect(claimsOf(cook)).toEqual(
      [
        { target: step1.id, cook: kim.id },
        { target: dish1.id, cook: kim.id },
      ].toSorted((a, b) => (a.target < b.target ? -1 : 1)),
    )
  })

  test('R3 a step added and claimed in one breath is known when the claim is decided', async () => {
    const opened = await room()
    const { host, cook } = opened
    addStep(cook.client.doc, { ...plainStep, id: 'new-step', dish: dish1.id, after: [] })
    cook.client.ask({ op: 'op-breath', kind: 'claim', target: 'new-step', cook: other.id })
    await opened.settle()
    expect(cook.client.outcomes.get('op-breath')?.kind).toBe('done')
    expect(claimsOf(host)).toEqual([{ target: 'new-step', cook: other.id }])
  })
})

describe('closing', () => {
  test('R23 revoking closes every socket of a member at once and hears nothing more from it', async () => {
    const opened = await room()
    const { host, cook } = opened
    const phone = opened.device('m-cook')
    opened.connect(phone)
    await opened.settle()
    renameDish(cook.client.doc, dish1.id, 'Too late')
    opened.rooms().closeMember('m-cook', CLOSE.removed)
    await opened.settle()
    expect(cook.closedWith).toBe(CLOSE.removed)
    expect(phone.closedWith).toBe(CLOSE.removed)
    expect(host.closedWith).toBeNull()
    expect(nameOf(host)).toBe(dish1.name)
    opened.rooms().closeEvening(EVENING, CLOSE.gone)
    await opened.settle()
    expect(host.closedWith).toBe(CLOSE.gone)
  })

  test('R23 a changed seat asks its sockets to come again, and so does a server that stops', async () => {
    const opened = await room()
    opened.rooms().reseat('m-cook')
    await opened.settle()
    expect(opened.cook.closedWith).toBe(1012)
    renameDish(opened.host.client.doc, dish1.id, 'Just before')
    while (opened.host.line?.toServer.length) opened.host.line.deliverToServer()
    const closed = opened.rooms().close()
    await opened.settle()
    await closed
    await opened.settle()
    expect(opened.host.closedWith).toBe(1012)
    expect(opened.host.client.acked).toBe(opened.host.client.sent)
  })

  test('R5 every socket hears the server every 5 s, and one that answers no ping is dropped after 30 s', async () => {
    const opened = await room()
    const { host, cook } = opened
    for (let second = 0; second < 60; second += 5) {
      opened.clock.advance(5000)
      host.line?.pong()
      await opened.settle()
    }
    expect(host.client.beats).toBe(12)
    expect(host.closedWith).toBeNull()
    expect(cook.closedWith).toBe(1006)
    expect(cook.client.beats).toBeLessThan(8)
  })
})

describe('a disk that is full', () => {
  test('R14 nothing is acknowledged, everybody is asked to come again, commands are told, and all is well when there is room', async () => {
    const opened = await room()
    const { host, cook, log } = opened
    log.setFull(true)
    const before = cook.client.acked
    renameDish(cook.client.doc, dish1.id, 'While full')
    host.client.ask({ op: 'op-full-1', kind: 'claim', target: step1.id, cook: kim.id })
    await opened.settle()
    expect(cook.client.acked).toBe(before)
    expect(cook.closedWith).toBe(4500)
    expect(host.closedWith).toBe(4500)
    expect(host.client.outcomes.get('op-full-1')).toMatchObject({ kind: 'refused', why: { kind: 'not-stored' } })
    expect(nameOf(host)).toBe(dish1.name)
    opened.connect(cook)
    await opened.settle()
    expect(cook.closedWith).toBe(4500)
    log.setFull(false)
    opened.connect(cook)
    opened.connect(host)
    await opened.settle()
    expect(nameOf(host)).toBe('While full')
    expect(cook.client.acked).toBe(cook.client.sent)
    expect(host.client.outcomes.get('op-full-1')).toEqual({ op: 'op-full-1', kind: 'done' })
    expect(claimsOf(cook)).toEqual([{ target: step1.id, cook: kim.id }])
  })
})

describe('compaction', () => {
  test('R10 five hundred updates are folded into a snapshot and the plan stays as it was', async () => {
    const opened = await room()
    const { host } = opened
    for (let n = 0; n < 520; n += 1) {
      setFields(host.client.doc, 'dishes', dish1.id, { yields: 1 + (n % 50) })
      if (n % 40 === 0) {
        opened.clock.advance(2000)
        await opened.settle()
      }
    }
    await opened.settle()
    const stored = await opened.log.load(EVENING)
    expect(stored?.sinceSnapshot.count).toBeLessThan(60)
    expect(stored?.seq).toBe(520)
    await opened.kill()
    expect(await opened.rooms().read(EVENING)).toEqual(readPlan(host.client.doc).evening)
  })
})
