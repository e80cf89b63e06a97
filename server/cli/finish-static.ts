import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'
import { root } from '#server/root.ts'

/** V8's explicit compile hint (v8.dev/blog/explicit-compile-hints), a script's first line; to other engines it is a comment. */
const HINT = '//# allFunctionsCalledOnLoad\n'

/**
 * Makes what was built for the browsers ready to be served. Scripts are compiled whole by the browser, beside the page's own thread and
 * as they come, rather than function by function on that thread when each is first called. Scripts and styles are packed once, not for each who asks.
 */
export const finishStatic = (folder = `${root}.next/static/`): void => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.(js|css)$/.test(name))
  if (!files.some((name) => name.endsWith('.js'))) throw new Error(`no scripts in ${folder}: has Next put them elsewhere?`)
  for (const name of files) {
    const written = readFileSync(folder + name)
    const hinted = name.endsWith('.js') && !written.toString().startsWith(HINT)
    const file = hinted ? Buffer.concat([Buffer.from(HINT), written]) : written
    if (hinted) writeFileSync(folder + name, file)
    writeFileSync(`${folder}${name}.gz`, gzipSync(file, { level: 9 }))
    writeFileSync(`${folder}${name}.br`, brotliCompressSync(file, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }))
  }
}
