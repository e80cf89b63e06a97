import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { OTHERS } from '#app/_order/picture/columns.ts'
import { type Doing, doings } from '#app/_order/picture/doings.ts'
import type { Box } from '#app/_order/picture/outline.ts'
import { type Asked, type Picture, pictureOf } from '#app/_order/picture/picture.ts'
import { daysOf, type Row } from '#app/_order/rows.ts'
import { clockText, dayOf } from '#app/_words/clock.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { type PlannedEvening, planned } from './planned.ts'

const load = (path: string): Evening => {
  const parsed = parseEvening(JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')))
  if (!parsed.ok) throw new Error(`${path} is no evening`)
  return parsed.value
}

const EVENINGS: readonly (readonly [name: string, evening: Evening])[] = [
  ['evening A', load('../../support/evenings/a-lamb.json')],
  ['evening C', load('../../support/evenings/c-pork.json')],
  ['the demo', load('../../../prisma/demo/evening.json')],
  ['30 random steps', randomEvening(3, SIZES.small)],
  ['60 random steps', randomEvening(5, SIZES.middle)],
  ['120 random steps', randomEvening(7, SIZES.large)],
  ['one cook', randomEvening(11, { steps: 14, courses: 2, cooks: 1 })],
  ['eight cooks', randomEvening(13, { steps: 70, courses: 5, cooks: 8 })],
]

const WIDTHS = [360, 700, 860, 1100, 1600] as const
const ZOOMS = ['evening', 'hour', 'ten'] as const

/** Every width of a screen at every zoom, on a phone for each cook. */
const shapes = (evening: Evening): readonly Asked[] =>
  ZOOMS.flatMap((zoom) => [
    ...WIDTHS.filter((width) => width >= 840).map((width): Asked => ({ width, shape: 'wide', zoom, cook: null })),
    ...evening.cooks
      .slice(0, zoom === 'evening' ? 8 : 2)
      .map(({ id }, index): Asked => ({ width: WIDTHS[index % 2] ?? 360, shape: 'phone', zoom, cook: id })),
  ])

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height - 0.01 && b.y < a.y + a.height - 0.01

describe.each(EVENINGS)('%s', (_name, evening) => {
  const it: PlannedEvening = planned(evening)
  const pictures = shapes(evening).map((asked): [Asked, Picture] => [asked, pictureOf(it.evening, it.order, it.names, asked)])

  test('U1 no two lines of a cook touch, and none lies on that cook’s plates', () => {
    for (const [, picture] of pictures) {
      expect(picture.labels.length).toBeGreaterThan(0)
      for (const [index, label] of picture.labels.entries()) {
        for (const other of picture.labels.slice(index + 1)) {
          if (other.column === label.column) expect(overlap(label.box, other.box), `${label.key} and ${other.key}`).toBe(false)
        }
        for (const row of picture.courses)
          for (const plate of row.cookPlates) {
            const around = { x: plate.x - plate.r, y: row.y - plate.r, width: 2 * plate.r, height: 2 * plate.r }
            expect(overlap(label.box, around), `${label.key} and the plate of ${row.id}`).toBe(false)
          }
      }
    }
  })

  test('U1 every line stays in its column, beside its mark and on the drawing', () => {
    for (const [, picture] of pictures)
      for (const label of picture.labels) {
        const column = picture.columns.cooks.find((candidate) => candidate.id === label.column)
        const mark = picture.marks.find((candidate) => candidate.key === label.key)
        expect(column).toBeDefined()
        expect(mark).toBeDefined()
        if (!column || !mark) continue
        expect(label.box.x).toBeGreaterThan(mark.x)
        expect(label.box.x + label.box.width).toBeLessThanOrEqual(column.x + column.width)
        expect(label.box.y + label.box.height).toBeLessThanOrEqual(picture.height)
        expect(label.clock).toBe(clockText(label.doing.from, evening.zone))
      }
  })

  test('U2 later is never higher, course lines and marks included', () => {
    for (const [, picture] of pictures) {
      const rows = picture.courses.map((row) => row.y)
      expect(rows).toEqual(rows.toSorted((a, b) => a - b))
      for (const mark of picture.marks) expect(mark.y).toBeGreaterThanOrEqual(picture.scale.y(mark.doing.from) - 0.01)
      const byTime = picture.marks.toSorted((a, b) => a.doing.from - b.doing.from)
      for (const [index, mark] of byTime.entries()) {
        const next = byTime[index + 1]
        if (next && next.doing.from > mark.doing.from)
          expect(picture.scale.y(next.doing.from)).toBeGreaterThanOrEqual(picture.scale.y(mark.doing.from))
      }
    }
  })

  test('U3 who is up has a notch: no work of a cook lies on their cloth', () => {
    const atTable = new Set(evening.steps.filter((step) => step.where === 'table').map((step) => step.id))
    for (const [, picture] of pictures)
      for (const label of picture.labels.filter((candidate) => !atTable.has(candidate.doing.cue.step)))
        for (const sit of picture.sits.filter((candidate) => candidate.column === label.column))
          expect(overlap(label.box, sit.box), `${label.key} on the cloth`).toBe(false)
  })

  test('U3 the cloth is one closed outline or several, with its hem', () => {
    for (const [, picture] of pictures) {
      expect(picture.cloth.edge).toMatch(/^M.*Z$/)
      expect(picture.cloth.hem.split('Z')).toHaveLength(picture.cloth.edge.split('Z').length)
    }
  })

  test('U1 what is said of a sit touches no line and no course’s plates', () => {
    let said = 0
    for (const [, picture] of pictures)
      for (const sit of picture.sits) {
        if (sit.said === null) continue
        said += 1
        const words = { x: sit.box.x, y: sit.said - 11, width: sit.box.width, height: 13 }
        expect(words.y).toBeGreaterThanOrEqual(sit.box.y)
        for (const label of picture.labels.filter((candidate) => candidate.column === sit.column))
          expect(overlap(label.box, words), `${label.key} and the sit`).toBe(false)
        for (const row of picture.courses) expect(Math.abs(row.y - (sit.said - 4))).toBeGreaterThan(8)
      }
    expect(said).toBeGreaterThan(0)
  })

  test('U20 near by, ten minutes fill a screen, times can be read at arm’s length, and every height has its moment', () => {
    for (const [asked, picture] of pictures) {
      const { scale, line } = picture
      if (asked.zoom !== 'evening') expect(line.size).toBeGreaterThanOrEqual(15)
      for (const doing of picture.labels.map((label) => label.doing))
        expect(Math.abs(scale.y(scale.at(scale.y(doing.from))) - scale.y(doing.from))).toBeLessThan(0.01)
      const close = picture.marks.filter((mark) => mark.doing.to - mark.doing.from >= 5 * 60_000 && mark.doing.from > scale.from)
      for (const { doing } of asked.zoom === 'ten' ? close : []) {
        const folds = scale.folds.some((at) => at > doing.from && at < doing.to)
        if (!folds) expect((scale.y(doing.to) - scale.y(doing.from)) / ((doing.to - doing.from) / 600_000)).toBeGreaterThan(600)
      }
    }
  })

  test('U24 who reads has a column, everybody else one of their own or one together in which each line names its cook', () => {
    for (const [asked, picture] of pictures) {
      const inColumns = picture.columns.cooks.flatMap((column) => column.cooks)
      expect(new Set(inColumns).size).toBe(inColumns.length)
      if (asked.shape === 'phone') expect(inColumns).toEqual([asked.cook])
      else expect(new Set(inColumns)).toEqual(new Set(evening.cooks.map((cook) => cook.id)))
      const others = picture.columns.cooks.find((column) => column.id === OTHERS)
      for (const label of picture.labels.filter((candidate) => candidate.column === others?.id))
        expect(label.words[0]).toContain(it.names.cookName(label.doing.cook).slice(0, 4))
    }
  })

  test('U6 the list tells every doing of every cook that the picture and its days ahead show', () => {
    const listed = new Set(
      daysOf(it.evening, it.order, it.names).flatMap(({ rows }) =>
        rows.flatMap((row) =>
          row.kind === 'doing' ? row.cooks.map((cook) => `${cook} ${row.doing.cue.step}.${row.doing.cue.batch} ${row.at}`) : [],
        ),
      ),
    )
    const rows = daysOf(it.evening, it.order, it.names).flatMap((day) => day.rows)
    const of = <K extends Row['kind']>(kind: K) => rows.filter((row): row is Extract<Row, { kind: K }> => row.kind === kind)
    const told = new Set([...of('doing').map((row) => row.doing.cue), ...of('alone').map((row) => row.cue)])
    expect(it.order.cues.filter((cue) => !told.has(cue))).toEqual([])
    expect(of('course').map((row) => row.course)).toHaveLength(it.order.courses.length)
    expect(of('clash').map((row) => row.clash)).toEqual(expect.arrayContaining([...it.order.clashes]))
    expect(of('keep')).toHaveLength(it.order.keeping.filter((keep) => keep.to > keep.from).length)
    expect(of('heat')).toHaveLength(it.order.ovens.flatMap((oven) => oven.preheats).length)
    expect(of('sits').flatMap((row) => row.cooks)).toHaveLength(it.order.cooks.flatMap((cook) => cook.sits).length)
    const all = doings(it.order, it.names)
    expect(all.length).toBeGreaterThan(0)
    for (const doing of all) expect(listed).toContain(`${doing.cook} ${doing.cue.step}.${doing.cue.batch} ${doing.from}`)
    const id = ({ cue, from }: Doing) => `${cue.step}.${cue.batch} ${from}`
    for (const [asked, picture] of pictures) {
      const drawn = new Set(picture.labels.map((label) => id(label.doing)))
      const theirs = all.filter((doing) => asked.shape === 'wide' || doing.cook === asked.cook)
      for (const doing of theirs) if (dayOf(evening, doing.from) >= 0) expect(drawn).toContain(id(doing))
    }
  })
})

test('U1 on a phone any two lines of a cook are 44 px apart', () => {
  const it = planned(randomEvening(5, SIZES.middle))
  for (const cook of it.evening.cooks) {
    const { labels } = pictureOf(it.evening, it.order, it.names, { width: 366, shape: 'phone', zoom: 'evening', cook: cook.id })
    for (const [index, label] of labels.entries()) {
      const next = labels[index + 1]
      if (next) expect(next.box.y - label.box.y).toBeGreaterThanOrEqual(43.99)
    }
  }
})

test('U24 a clash is hatched over its own kit, while a step in question has it', () => {
  const it = planned(load('../../support/evenings/c-pork.json'))
  const picture = pictureOf(it.evening, it.order, it.names, { width: 1100, shape: 'wide', zoom: 'evening', cook: null })
  const clash = it.order.clashes.find((candidate) => candidate.kit !== null)
  const [hatch] = picture.hatches
  const column = picture.columns.ovens.find((oven) => oven.id === clash?.kit)
  if (!clash || !hatch || !column) throw new Error('evening C clashes over its oven')
  expect(hatch.box.x).toBeGreaterThanOrEqual(column.x)
  expect(hatch.box.x + hatch.box.width).toBeLessThanOrEqual(column.x + column.width)
  const having = it.order.cues.filter(
    (cue) =>
      clash.steps.includes(cue.step) &&
      cue.kit.some((kit) => kit.id === clash.kit) &&
      cue.end > clash.from &&
      cue.start < clash.to,
  )
  expect(having.length).toBeGreaterThan(0)
  const first = Math.min(...having.map((cue) => Date.parse(cue.start)))
  expect(hatch.box.y).toBeCloseTo(picture.scale.y(Math.max(Date.parse(clash.from), first)))
  expect(hatch.box.y + hatch.box.height).toBeLessThanOrEqual(picture.scale.y(Date.parse(clash.to)) + 22)
})
