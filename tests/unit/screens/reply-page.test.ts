import fc from 'fast-check'
import { expect, test } from 'vitest'
import { answerOf } from '#app/_reply/answer-of.ts'
import { fieldsOf, readFields } from '#app/_reply/fields.ts'
import { replyPage } from '#app/_reply/reply-form.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { Reply } from '#server/guests/reply.ts'
import { formOf } from '#tests/support/posted-form.ts'
import { PAYLOADS } from '#tests/support/recipes/payloads.ts'

const guest: Guest = {
  id: 'g-1',
  name: 'Odile',
  reply: 'yes',
  child: false,
  portion: 1,
  needs: null,
  drinks: 'unknown',
  drives: false,
  words: '',
}

const replyOf = (people: readonly Guest[], label = 'Odile'): Reply => ({
  evening: {
    name: 'A dinner',
    date: '2027-03-06',
    zone: 'Europe/London',
    guestsFrom: { day: 0, time: '19:00' },
    sitDown: { day: 0, time: '19:30' },
    hosts: ['Mira'],
    place: 'Here',
  },
  menu: null,
  open: true,
  answerBy: null,
  label,
  places: people.length + 1,
  revision: 3,
  answeredAt: '2027-03-01T10:00:00Z',
  consent: true,
  keptUntil: '2027-04-05',
  people,
})

const pageOf = (reply: Reply): string =>
  replyPage({ css: '', nonce: 'n', theme: null }, { reply, fields: fieldsOf(reply), problems: [], refused: null, sent: true })

const needs = fc.uniqueArray(
  fc.record({
    need: fc.constantFrom('nuts', 'milk', 'vegan', 'kiwi-fruit', 'rye-bread', 'low-immunity'),
    grade: fc.constantFrom('dislikes', 'avoids', 'allergy', 'severe') as fc.Arbitrary<'dislikes'>,
  }),
  { selector: ({ need }) => need, maxLength: 6 },
)
const people = fc
  .array(
    fc.record({
      name: fc.constantFrom('Odile', 'A "quoted" name', '<b>Kit</b>', 'O’Hara & Son'),
      reply: fc.constantFrom('yes', 'no', 'maybe') as fc.Arbitrary<'yes'>,
      plate: fc.constantFrom({ child: false, portion: 1 }, { child: true, portion: 0.5 }, { child: false, portion: 1.1 }),
      arrives: fc.constantFrom(undefined, { day: 0, time: '20:15' }),
      needs: fc.option(needs),
      drinks: fc.constantFrom('alcohol', 'none', 'unknown') as fc.Arbitrary<'none'>,
      drives: fc.boolean(),
      words: fc.constantFrom('', 'Two lines\nof "words"', '  </textarea><script>1</script>'.trim()),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((drawn) =>
    drawn.map(({ plate, arrives, drinks, drives, ...person }, at): Guest => {
      const grown = plate.child ? { drinks: 'none' as const, drives: false } : { drinks, drives }
      return { ...person, ...plate, ...grown, ...(arrives && { arrives }), id: `g-${at}` }
    }),
  )

test('I12 a form that is sent as it stands says what is stored', () => {
  fc.assert(
    fc.property(people, (stored) => {
      const reply = replyOf(stored)
      const form = formOf(pageOf(reply), 'data-answer')
      const answer = answerOf(readFields(form ?? new URLSearchParams()), reply)
      expect(answer.ok && answer.value.people).toEqual(stored)
    }),
    { numRuns: 30 },
  )
})

test('I13 told twice, the more serious one counts; what is eaten by silence is not known', () => {
  const reply = replyOf([guest])
  const form = (fields: Record<string, string>) =>
    new URLSearchParams({ 'name-0': 'Odile', 'id-0': 'g-1', 'reply-0': 'yes', consent: 'yes', ...fields })
  const needsOf = (fields: Record<string, string>) => {
    const answer = answerOf(readFields(form(fields)), reply)
    return answer.ok ? answer.value.people[0]?.needs : answer.error.map(({ field }) => field)
  }
  const twice = { 'eats-0': 'but', 'need-0-0': 'nuts', 'grade-0-0': 'dislikes', 'need-0-1': 'nuts', 'grade-0-1': 'severe' }
  expect(needsOf(twice)).toEqual([{ need: 'nuts', grade: 'severe' }])
  expect(needsOf({})).toBeNull()
  expect(needsOf({ 'eats-0': 'all' })).toEqual([])
  expect(needsOf({ ...twice, 'eats-0': 'all' })).toEqual(['eats-0'])
  // Nobody's allergy is taken for less than they say: how serious it is has to be said.
  expect(needsOf({ 'eats-0': 'but', 'need-0-0': 'peanuts' })).toEqual(['grade-0-0'])
  expect(needsOf({ 'eats-0': 'but', 'need-0-0': 'vegan' })).toEqual([{ need: 'vegan', grade: 'avoids' }])
  expect(needsOf({ 'eats-0': 'but' })).toEqual(['need-0-0'])
})

test('I18 whatever is written is text on the page, and comes back as it was', () => {
  const plain = pageOf(replyOf([guest])).match(/<[a-z]/g)?.length
  let seen = 0
  for (const payload of PAYLOADS) {
    const name = payload.replace(/\s+/g, ' ').trim().slice(0, 80)
    const reply = { ...replyOf([{ ...guest, name, words: payload.slice(0, 2000) }]), label: name }
    const page = pageOf({ ...reply, evening: { ...reply.evening, name, place: name, hosts: [name] } })
    expect(page.match(/<[a-z]/g)?.length, name).toBe(plain)
    // To read a page as a browser does takes long: some of them.
    if (seen % 10 === 0) expect(formOf(page, 'data-answer')?.get('name-0')).toBe(new URLSearchParams({ name }).get('name'))
    seen += 1
  }
  expect(seen).toBeGreaterThan(20)
})
