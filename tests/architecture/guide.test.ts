import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { expect, test } from 'vitest'
import { root } from '#server/root.ts'

const documents = [
  'README.md',
  ...readdirSync(`${root}docs/guide`).flatMap((name) => (name.endsWith('.md') ? [`docs/guide/${name}`] : [])),
]

interface Link {
  readonly from: string
  readonly to: string
}

/** What a document leads to within the repository, from the root: its links and pictures. */
const linksIn = (path: string, text: string): Link[] =>
  Array.from(text.matchAll(/\[[^\]]*\]\(([^)#\s]+)[^)]*\)/g), ([, to = '']) => ({
    from: path,
    to: /^[a-z]+:/.test(to) ? '' : join(dirname(path), to),
  })).filter(({ to }) => to !== '')

const links = documents.flatMap((path) => linksIn(path, readFileSync(`${root}${path}`, 'utf8')))

test('I6 the guide leads nowhere that is not there, and every page of it is found from the README', () => {
  expect(links.length).toBeGreaterThan(20)
  expect(links.filter(({ to }) => !existsSync(`${root}${to}`))).toEqual([])
  const found = new Set(links.flatMap(({ from, to }) => (from === 'README.md' ? [relative('.', to)] : [])))
  expect(documents.filter((path) => path !== 'README.md' && !found.has(path))).toEqual([])
})

test('I6 is seen to fail: links and pictures are read, other addresses are not', () => {
  const text = '[a](b.md) ![c d](pictures/e.webp "f") [g](https://example.org) [h](b.md#i)'
  expect(linksIn('docs/guide/x.md', text)).toEqual([
    { from: 'docs/guide/x.md', to: 'docs/guide/b.md' },
    { from: 'docs/guide/x.md', to: 'docs/guide/pictures/e.webp' },
    { from: 'docs/guide/x.md', to: 'docs/guide/b.md' },
  ])
})
