import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { finishStatic } from '#server/cli/finish-static.ts'

let folder = ''
beforeEach(() => {
  folder = `${mkdtempSync(`${tmpdir()}/tableward-static-`)}/`
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

test('E18 scripts say that they are to be compiled whole, once, and stand packed beside themselves as styles do', () => {
  mkdirSync(`${folder}chunks`)
  writeFileSync(`${folder}chunks/a.js`, 'const a = "é"\n')
  writeFileSync(`${folder}chunks/b.css`, 'p { margin: 0 }\n')
  writeFileSync(`${folder}c.woff2`, 'letters')
  finishStatic(folder)
  finishStatic(folder)
  const script = readFileSync(`${folder}chunks/a.js`, 'utf8')
  expect(script).toBe('//# allFunctionsCalledOnLoad\nconst a = "é"\n')
  expect(readFileSync(`${folder}chunks/b.css`, 'utf8')).toBe('p { margin: 0 }\n')
  for (const name of ['chunks/a.js', 'chunks/b.css']) {
    const whole = readFileSync(folder + name, 'utf8')
    expect(gunzipSync(readFileSync(`${folder}${name}.gz`)).toString()).toBe(whole)
    expect(brotliDecompressSync(readFileSync(`${folder}${name}.br`)).toString()).toBe(whole)
  }
  expect(readdirSync(folder)).toEqual(['c.woff2', 'chunks'])
})

test('E18 a build without scripts is not a build', () => {
  expect(() => finishStatic(folder)).toThrow('no scripts')
})
