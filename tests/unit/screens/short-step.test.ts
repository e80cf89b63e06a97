import { expect, test } from 'vitest'
import { doings } from '#app/_order/picture/doings.ts'
import { momentShort, stepForms, thingOf } from '#app/_words/short-step.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { planned } from './planned.ts'

test('U21 a step is told shorter by whole clauses, first words first, longest form first', () => {
  const steps = [loadEvening('a-lamb'), loadEvening('c-pork')].flatMap((evening) => evening.steps)
  expect(steps.length).toBeGreaterThan(20)
  for (const { does } of steps) {
    const forms = stepForms(does)
    expect(forms.length).toBeGreaterThan(0)
    for (const form of forms) {
      expect(form.split(/[ ,.;]/)[0]).toBe(does.split(/[ ,.;]/)[0])
      expect(form).not.toMatch(/…|[,;:] ?$| (?:the|a|of|and|or|to|in|on|with)$/)
      for (const word of form.split(/[ ,;:]+/)) expect(does).toContain(word)
    }
    expect(forms).toEqual(forms.toSorted((a, b) => b.length - a.length))
  }
  expect(stepForms('Whisk eggs, cream and mustard, stir in the leeks')).toContain('Whisk eggs, cream')
  expect(stepForms('Soften the leeks in butter with the lid on')).toContain('Soften the leeks')
  expect(stepForms('Wash and dry the leaves')).toEqual(['Wash and dry the leaves', 'Wash and dry leaves'])
})

test('U21 a touch says what is done to what: by its own words, else by where it stands', () => {
  const put = (does: string, kind: 'in' | 'out', place: 'oven' | 'ring' | 'none') => {
    const { forms, tag } = momentShort(does, { kind }, place)
    return `${forms[forms.length - 1]}${tag}`
  }
  expect(put('Bake the cases blind, weights in', 'in', 'oven')).toBe('Cases in')
  expect(put('Cook the rice with bay, lid on', 'out', 'ring')).toBe('Rice off')
  expect(put('Rest the dough', 'in', 'none')).toBe('Dough begin')
  expect(put('Roast slowly', 'out', 'oven')).toBe('Roast slowly: out')
  expect(momentShort('Bake the crumble on a tray', { kind: 'every', does: 'turn' }, 'oven').forms[0]).toBe('Turn the crumble')
  expect(momentShort('Bake the crumble', { kind: 'every', does: undefined }, 'oven').forms[0]).toBe('Check the crumble')
  expect(momentShort('Bake the cases', { kind: 'every', does: 'take the weights out' }, 'oven').forms).toContain(
    'Take the weights out',
  )
  expect(thingOf('Bring a big pan of salted water to the boil')).toBe('big pan of salted water')
  expect(thingOf('Bake until hot through')).toBeNull()
})

test('U21 two steps of different dishes are never told in the same words', () => {
  for (const evening of [loadEvening('a-lamb'), loadEvening('c-pork')]) {
    const it = planned(evening)
    const dishes = new Map<string, Set<string | null>>()
    for (const doing of doings(it.order, it.names)) {
      const said = `${doing.short.forms[doing.short.forms.length - 1]}${doing.short.tag}`
      const dish = it.names.step(doing.cue.step)?.dish ?? null
      dishes.set(said, (dishes.get(said) ?? new Set()).add(dish))
    }
    expect(dishes.size).toBeGreaterThan(10)
    for (const [said, theirs] of dishes) expect([said, theirs.size]).toEqual([said, 1])
  }
})
