import { expect, test } from 'vitest'
import { parseEvening } from '#lib/domain/parse.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'

test.each(['00:00', '03:10', '09:30', '14:00', '19:45', '23:59'])(
  'an evening of tonight at %s sits down when it is asked to',
  (time) => {
    const base = readEvening('a-lamb')
    const now = Date.parse(`2026-03-28T${time}:40Z`)
    for (const minutes of [-90, 0, 20, 300]) {
      const made = tonightEvening(base, now, minutes)
      expect(parseEvening(JSON.parse(JSON.stringify(made)))).toMatchObject({ ok: true })
      const sitDown = epochMsOf(made, made.sitDown)
      expect(Math.abs(sitDown - (now + minutes * 60_000))).toBeLessThanOrEqual(30_000)
      const apart = (evening: typeof base) => epochMsOf(evening, evening.sitDown) - epochMsOf(evening, evening.guestsFrom)
      expect(apart(made)).toBe(apart({ ...base, zone: 'UTC' }))
      const firstStay = made.cooks[0]?.presence[0]
      const was = base.cooks[0]?.presence[0]
      if (!firstStay || !was) throw new Error('a cook without hours')
      expect(sitDown - epochMsOf(made, firstStay.from)).toBe(
        epochMsOf({ ...base, zone: 'UTC' }, base.sitDown) - epochMsOf({ ...base, zone: 'UTC' }, was.from),
      )
    }
  },
)
