import { PathParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime.js'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import * as z from 'zod/mini'
import { CookItem } from '#app/_cooks/cook-item.tsx'
import { KitLine } from '#app/_cooks/kit-line.tsx'
import { KitchenItem } from '#app/_cooks/kitchen-item.tsx'
import { openCompany } from '#app/_sync/company.ts'
import type { Plan } from '#app/_sync/plan.ts'
import { CompanyContext, PlanContext } from '#app/_sync/use-plan.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { Busy, Cook, Kit, Kitchen, Presence } from '#lib/domain/kitchen.ts'
import { readPlan } from '#lib/plan/read.ts'
import * as make from '#tests/support/evening-builders.ts'
import { planOf } from '../plan/open-plan.ts'

const planFor = (evening: Evening): Plan => {
  const doc = planOf(evening)
  return {
    doc,
    evening: readPlan(doc).evening,
    reports: [],
    me: null,
    link: { kind: 'saved' },
    order: { kind: 'none' },
    asking: new Map(),
    send: () => Promise.reject(new Error('nothing is sent here')),
    tell: () => ({ op: '', answered: Promise.reject(new Error('nothing is told here')) }),
    waitingTells: 0,
    told: [],
    hear: () => undefined,
    edit: (change) => change(doc),
    tryOut: () => Promise.reject(new Error('nothing is tried here')),
    undo: () => undefined,
    redo: () => undefined,
    canUndo: false,
    canRedo: false,
    onAlerts: () => () => undefined,
    onGuests: () => () => undefined,
    now: () => 0,
  }
}

/** The value of every line and list on the screen that can be written over. */
const blanks = (evening: Evening, screen: ReactNode): string[] => {
  const html = renderToStaticMarkup(
    <PathParamsContext value={{ id: 'e' }}>
      <CompanyContext value={openCompany()}>
        <PlanContext value={planFor(evening)}>{screen}</PlanContext>
      </CompanyContext>
    </PathParamsContext>,
  )
  const isOpen = (tag: string) => !/ disabled=/.test(tag)
  const lines = Array.from(html.matchAll(/<input[^>]*>/g), ([tag]) => tag)
    .filter(isOpen)
    .map((tag) => / value="([^"]*)"/.exec(tag)?.[1] ?? '')
  const lists = Array.from(html.matchAll(/<select[^>]*>.*?<\/select>/gs), ([list]) => list)
    .filter((list) => isOpen(/<select[^>]*>/.exec(list)?.[0] ?? ''))
    .map((list) => /<option[^>]* selected=""[^>]*>([^<]*)/.exec(list)?.[1] ?? '')
  return [...lines, ...lists]
}

const SOME = [
  [true, false],
  [true, undefined],
  [2, 3],
  [1, 1.3],
  [150, 240],
  ['PT10M', 'PT25M'],
  ['Kind one', 'Kind two'],
] as const

/** Two values that a field may have; throws for a kind of field that this test does not know yet. */
const twoValues = (schema: z.ZodMiniType): readonly [unknown, unknown] => {
  const tries: (readonly unknown[])[] = [...(schema instanceof z.ZodMiniEnum ? [schema.options] : []), ...SOME]
  for (const [a, b] of tries) if (schema.safeParse(a).success && schema.safeParse(b).success) return [a, b]
  throw new Error(`no two values for a ${schema.def.type}`)
}

type Draw = (field: string, value: unknown) => string[]

/** Each field of a shape can be said, but for those named: two values of it give two sets of blanks. */
const everyFieldIsSaid = (shape: Readonly<Record<string, z.ZodMiniType>>, but: readonly string[], draw: Draw): void => {
  const fields = Object.entries(shape).filter(([field]) => !but.includes(field))
  expect(fields.length).toBeGreaterThan(0)
  for (const [field, schema] of fields) {
    const [a, b] = twoValues(schema)
    expect(draw(field, a), `${field} can be said`).not.toEqual(draw(field, b))
  }
}

const evening = make.evening({
  kitchens: [
    make.kitchen('home', make.HOME_KIT),
    make.kitchen(
      'away',
      make.HOME_KIT.map((kit) => ({ ...kit, id: `away-${kit.id}` })),
      12,
    ),
  ],
  cooks: [make.cook('kim')],
})
const [home, away] = evening.kitchens
const [kim] = evening.cooks
if (!home || !away || !kim) throw new Error('the evening is too small')
const shared = { isOpen: true, isFresh: false, onToggle: () => undefined, moves: null }

test('G7 every field of every kind of kit can be said in its sentence', () => {
  expect(Kit.def.options.length).toBeGreaterThan(4)
  for (const option of Kit.def.options) {
    const piece = make.HOME_KIT.find((kit) => kit.kind === option.shape.kind.def.values[0])
    if (!piece) throw new Error(`no ${option.shape.kind.def.values[0]} to change`)
    everyFieldIsSaid(option.shape, ['id', 'kind'], (field, value) =>
      blanks(evening, <KitLine kitchen={home} kit={Kit.parse({ ...piece, [field]: value })} name="it" autoFocus={false} />),
    )
  }
})

test('G7 every field of a kitchen can be said', () => {
  const draw = (kitchen: Kitchen) => blanks(evening, <KitchenItem kitchen={kitchen} {...shared} />)
  everyFieldIsSaid(Kitchen.shape, ['id', 'kit'], (field, value) => draw(Kitchen.parse({ ...away, [field]: value })))
  expect(draw({ ...away, kit: away.kit.slice(1) }).length).toBeLessThan(draw(away).length)
})

test('G7 every field of a cook can be said, and of each stretch of their hours', () => {
  const draw = (cook: Cook) => blanks(evening, <CookItem cook={cook} member={undefined} {...shared} />)
  everyFieldIsSaid(Cook.shape, ['id', 'presence', 'busy'], (field, value) => draw(Cook.parse({ ...kim, [field]: value })))
  const hours = { kitchen: 'home', from: make.at('-1 12:00'), to: make.at('-1 18:00') }
  const others: { readonly [field in keyof Presence]: readonly Presence[field][] } = {
    kitchen: ['away'],
    from: [make.at('-2 12:00'), make.at('-1 12:30')],
    to: [make.at('18:00'), make.at('-1 18:30')],
  }
  expect(Object.keys(others).toSorted()).toEqual(Object.keys(Presence.shape).toSorted())
  for (const [field, values] of Object.entries(others))
    for (const value of values)
      expect(draw({ ...kim, presence: [{ ...hours, [field]: value }] }), field).not.toEqual(draw({ ...kim, presence: [hours] }))
  const kept = { name: 'Bedtime', from: make.at('18:45'), to: make.at('19:15') }
  const times = { from: [make.at('-1 18:45'), make.at('18:50')], to: [make.at('1 19:15'), make.at('19:20')] }
  const otherwise: { readonly [field in keyof Busy]: readonly Busy[field][] } = { name: ['Choir'], ...times }
  expect(Object.keys(otherwise).toSorted()).toEqual(Object.keys(Busy.shape).toSorted())
  for (const [field, values] of Object.entries(otherwise))
    for (const value of values)
      expect(draw({ ...kim, busy: [{ ...kept, [field]: value }] }), field).not.toEqual(draw({ ...kim, busy: [kept] }))
})

test('G7 is seen to fail: a field without a blank, and one that is shut, are found', () => {
  const shape = { places: z.int(), colour: z.string() }
  const draw =
    (isShut: boolean): Draw =>
    (field, value) =>
      blanks(evening, <input disabled={isShut} readOnly value={field === 'places' ? String(value) : 'x'} />)
  everyFieldIsSaid(shape, ['colour'], draw(false))
  expect(() => everyFieldIsSaid(shape, [], draw(false))).toThrow('colour can be said')
  expect(() => everyFieldIsSaid(shape, ['colour'], draw(true))).toThrow('places can be said')
  expect(() => twoValues(z.array(z.date()))).toThrow('no two values')
})
