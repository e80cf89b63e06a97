import { describe, expect, test } from 'vitest'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { planOn, shown } from '#tests/support/night-people.ts'
import { type Night, scriptedNight } from '#tests/support/scripted-night.ts'

const MINUTE = 60_000
/** Planned again at every word of eight people, in one thread. */
const LONG = { timeout: 240_000 }

const factOf = (evening: Evening, key: 'step' | 'course', id: string): NightFact | undefined =>
  evening.night.find((fact) => key in fact && (fact as Record<string, unknown>)[key] === id)

const startOf = (night: Night, step: string): number =>
  msOfInstant(shown(night.person('ada').device)?.cues.find((cue) => cue.step === step)?.start ?? '')

/** Every tap is answered, and stands in the plan at the moment at which it was made. */
const lost = ({ people }: Night): unknown[] => {
  const [first] = people
  const plan = first && planOn(first.device)
  if (!plan) return ['nobody is there']
  return people.flatMap(({ taps, device, cook }) =>
    taps.flatMap(({ op, say, atMs }): unknown[] => {
      const outcome = device.client.outcomes.get(op)
      if (outcome?.kind !== 'done') return [{ cook, say, outcome }]
      const fact =
        'step' in say ? factOf(plan, 'step', say.step) : 'course' in say ? factOf(plan, 'course', say.course) : plan.night[0]
      if (!fact) return [{ cook, say, fact }]
      // Of two who say the same the first one counts, and says when.
      if (outcome.told === undefined) return []
      return Math.abs(msOfInstant(outcome.told) - atMs) <= 1000 ? [] : [{ cook, say, told: outcome.told, atMs }]
    }),
  )
}

describe('a night from the first word to the last plate', () => {
  test(
    'K22 K23 K24 eight cooks, three slips, two late guests, a dish that fails, ten minutes without a server, two clocks seven minutes off and a kill: every alert once and in time, an order within a second of each slip, no tap lost, nothing moved that need not be',
    LONG,
    async () => {
      const night = await scriptedNight(
        '17:00',
        {
          begins: new Map([['roll', 7 * MINUTE]]),
          ends: new Map([
            ['roast-it', 10],
            ['bake', 5],
          ]),
        },
        { dot: 7, eli: -7 },
      )
      const { server, people } = night
      await night.say('ada', { kind: 'begin' })
      await night.until('17:35')
      // Nobody says that the pastry is begun: planned again by the server itself when that has passed its grace.
      const roll = () => startOf(night, 'roll')
      const wanted = roll()
      await night.until(wanted + 2 * MINUTE + 1000)
      expect(roll()).toBeGreaterThanOrEqual(wanted + 2 * MINUTE)
      await night.until('18:15')
      const down = night.clock()
      await night.outage(10, () => night.person('cyd').device.client.reload())
      const back = night.clock()
      await night.until('19:10')
      await night.say('ada', { kind: 'sit-down', to: '2026-11-14T19:55:00+00:00' })
      await night.until('20:00')
      await night.say('dot', { kind: 'out', dish: 'tart', why: 'failed', instead: 'fruit' })
      await night.until('20:20')
      await night.say('gus', { kind: 'alarm', alarm: 'a1', dish: 'fruit', need: 'nuts' })
      expect(server.alarms).toEqual(['alarm:a1'])
      await night.killWhileRinging()
      await night.until('22:00')

      // Every alert once, and no more than a second late, but for what fell due while there was no server.
      const { rang } = server
      expect(rang.length).toBeGreaterThan(30)
      expect(server.held.length).toBeGreaterThan(0)
      expect(rang.map(({ id }) => id)).toEqual(expect.arrayContaining([...server.held]))
      expect(new Set(rang.map(({ id }) => id)).size).toBe(rang.length)
      expect([...server.stored.keys()].sort()).toEqual(rang.map(({ id }) => id).sort())
      const late = rang.filter(({ at, firedAt }) => firedAt < at || firedAt - at > 1000)
      for (const { at, firedAt } of late) {
        expect(at).toBeGreaterThanOrEqual(down)
        expect(at).toBeLessThan(back)
        expect(firedAt - back).toBeLessThanOrEqual(5000)
      }
      expect(new Set(rang.map(({ kind }) => kind))).toEqual(
        new Set(['begin', 'touch', 'look', 'get-up', 'plate', 'serve', 'overdue']),
      )
      // Whatever was begun while the server was there was called for first, and what was served too.
      const plan = planOn(night.person('ada').device)
      for (const { taps } of people)
        for (const { say, atMs } of taps)
          if (say.kind === 'started' && (atMs < down || atMs > back))
            expect(rang.map(({ id }) => id)).toContain(`begin:${say.step}:0`)
      for (const course of ['one', 'two', 'three', 'four']) expect(rang.map(({ id }) => id)).toContain(`serve:${course}`)

      // Every device has heard each of them, and nothing else, the one that was loaded again included.
      for (const { device } of people) {
        const heard = new Set(device.client.alerts.map(({ id }) => id))
        expect([...heard].sort()).toEqual(rang.map(({ id }) => id).sort())
      }

      // Each slip was answered in a second and moved little.
      const kinds = night.answered.flatMap(({ say }) => say.map(({ kind }) => kind))
      expect(kinds.filter((kind) => kind === 'longer')).toHaveLength(2)
      expect(night.answered.flatMap(({ say }) => say)).toContainEqual({ kind: 'started', step: 'roll' })
      expect(kinds).toEqual(expect.arrayContaining(['sit-down', 'out']))
      for (const { say, inTime, moved, frozen } of night.answered) {
        expect([say, inTime, frozen]).toEqual([say, true, []])
        expect(moved.length, `${JSON.stringify(say)} moved ${moved.join()}`).toBeLessThanOrEqual(2)
      }

      expect(lost(night)).toEqual([])
      expect(people.flatMap(({ taps }) => taps).length).toBeGreaterThan(40)
      expect(plan.dishes.find(({ id }) => id === 'tart')?.state).toBe('dropped')
      expect(plan.night.filter((fact) => 'course' in fact && fact.platesOff !== undefined)).toHaveLength(4)
      expect(server.logged).toEqual([])
      const document = Y.encodeStateAsUpdate(night.person('ada').device.client.doc)
      expect(document.length).toBeLessThan(256 * 1024)

      // Everybody was called for the alarm, and by no later word or start again.
      expect(server.alarms).toEqual(['alarm:a1'])

      // Closed, it is let go.
      await night.say('ada', { kind: 'close' })
      expect(server.nights().isLive('evening-1')).toBe(false)
      expect(server.nights().fired('evening-1')).toEqual([])
    },
  )
})
