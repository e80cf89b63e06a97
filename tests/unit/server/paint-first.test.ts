import { expect, test } from 'vitest'
import { scriptsAfterPaint } from '#server/web/paint-first.ts'

// As React 19 and Next 16 write a page; the names of files are not theirs.
const PAGE = `<!DOCTYPE html><html><head><link rel="stylesheet" href="/a.css" data-precedence="next"/>
<link rel="preload" as="script" fetchPriority="low" nonce="n" href="/boot.js"/><script src="/one.js" async="" nonce="n"></script>
<link rel="preload" href="/screen.js" as="script" nonce="n" fetchPriority="low"/><script src="/old.js" noModule="" nonce="n"></script></head>
<body><p>&lt;script src="/said.js" async=""&gt;</p><script nonce="n">(self.__next_f=[]).push("\\u003cscript src=\\"/data.js\\" async=\\"\\"")</script>
<script src="/boot.js" nonce="n" async=""></script></body></html>`

test('E18 a page names its scripts at its end, in place of what fetches them', () => {
  const page = scriptsAfterPaint(PAGE, 'n')
  expect(page).not.toMatch(/<script[^>]* async=""/)
  expect(page).not.toContain('rel="preload"')
  expect(page).toMatch(/<script nonce="n">[^<]*\(\["\/one\.js","\/boot\.js"\],\["\/screen\.js"\]\)<\/script><\/body><\/html>$/)
})

test('E18 what does not fetch a script stays as it was', () => {
  const page = scriptsAfterPaint(PAGE, 'n')
  for (const piece of [
    '<link rel="stylesheet" href="/a.css" data-precedence="next"/>',
    '<script src="/old.js" noModule="" nonce="n"></script>',
    '&lt;script src="/said.js" async=""&gt;',
    '(self.__next_f=[]).push("\\u003cscript src=\\"/data.js\\" async=\\"\\"")',
  ])
    expect(page).toContain(piece)
})

test('E18 a page that ends in the middle is left as it is', () => {
  const cut = PAGE.slice(0, -20)
  expect(scriptsAfterPaint(cut, 'n')).toBe(cut)
})
