import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { expect, test } from 'vitest'
import { root } from '#server/root.ts'

const PICTURES = 'docs/guide/pictures'
/** All pictures together: who clones the repository gets them every time they change. */
const MOST_BYTES = 1_500_000

const documents = [
  'README.md',
  ...readdirSync(`${root}docs/guide`).flatMap((name) => (name.endsWith('.md') ? [`docs/guide/${name}`] : [])),
]

interface Link {
  readonly from: string
  readonly to: string
  readonly alt: string | null
}

/** What a document leads to within the repository, from the root: links, and pictures with their alternative text. */
const linksIn = (path: string, text: string): Link[] =>
  Array.from(text.matchAll(/(!?)\[([^\]]*)\]\(([^)#\s]+)[^)]*\)/g), ([, mark, words = '', to = '']) => ({
    from: path,
    to: /^[a-z]+:/.test(to) ? '' : join(dirname(path), to),
    alt: mark === '!' ? words : null,
  })).filter(({ to }) => to !== '')

const links = documents.flatMap((path) => linksIn(path, readFileSync(`${root}${path}`, 'utf8')))

test('I6 the guide leads nowhere that is not there, and every page of it is found from the README', () => {
  expect(links.length).toBeGreaterThan(20)
  expect(links.filter(({ to }) => !existsSync(`${root}${to}`))).toEqual([])
  const found = new Set(links.flatMap(({ from, to }) => (from === 'README.md' ? [relative('.', to)] : [])))
  expect(documents.filter((path) => path !== 'README.md' && !found.has(path))).toEqual([])
})

test('I6 every picture is told in words and shown somewhere, and together they are small', () => {
  const pictures = links.filter(({ alt }) => alt !== null)
  expect(pictures.length).toBeGreaterThan(5)
  expect(pictures.filter(({ alt }) => (alt ?? '').length < 20)).toEqual([])
  const there = readdirSync(`${root}${PICTURES}`).map((name) => `${PICTURES}/${name}`)
  const shown = new Set(pictures.map(({ to }) => to))
  expect(there.filter((path) => !shown.has(path))).toEqual([])
  expect(there.reduce((sum, path) => sum + statSync(`${root}${path}`).size, 0)).toBeLessThanOrEqual(MOST_BYTES)
})

test('I6 is seen to fail: links and pictures are read, other addresses are not', () => {
  const text = '[a](b.md) ![c d](pictures/e.webp "f") [g](https://example.org) [h](b.md#i)'
  expect(linksIn('docs/guide/x.md', text)).toEqual([
    { from: 'docs/guide/x.md', to: 'docs/guide/b.md', alt: null },
    { from: 'docs/guide/x.md', to: 'docs/guide/pictures/e.webp', alt: 'c d' },
    { from: 'docs/guide/x.md', to: 'docs/guide/b.md', alt: null },
  ])
})
