/** What a device says that sleeps, or that shows a page without a network. Needs nothing else: the service worker has no more. */
export const CALL = { title: 'Tableward', body: 'Something calls you.' } as const

/** What a device says when there is something new to look at: not whose, and not what it is of. */
export const NEWS: Readonly<Record<string, string>> = {
  changed: 'An evening of yours has changed.',
  asked: 'Something is asked of you.',
  reply: 'An answer came.',
  ahead: 'There is something to do tomorrow.',
}

const escaped = (text: string): string => text.replace(/[&<>"']/g, (char) => `&#${char.charCodeAt(0)};`)

const PAGE_WORDS: Readonly<Record<string, string>> = { tonight: 'Tonight', order: 'Running order', shopping: 'Shopping' }

export interface KeptPage {
  readonly path: string
  /** Of the evening; empty when it is not known. */
  readonly name: string
}

/** The page that stands for one that is not kept on this device: that there is no connection, and what can be looked at all the same. */
export const awayPage = (kept: readonly KeptPage[]): string => {
  const links = kept.map(({ path, name }) => {
    const words = PAGE_WORDS[path.split('/').at(-1) ?? ''] ?? path
    return `<li><a href="${escaped(path)}">${escaped(name === '' ? words : `${words}: ${name}`)}</a></li>`
  })
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Not connected · Tableward</title>
<style>
:root { color-scheme: light dark }
body { margin: 0 auto; max-width: 34rem; padding: 12vh 24px; font: 1.0625rem/1.5 system-ui, sans-serif; color: light-dark(#2a1428, #f7ebdc); background: light-dark(#f1e8dc, #160b17) }
h1 { font: 500 1.5625rem Georgia, serif }
ul { padding: 0; list-style: none }
a { display: inline-block; padding: 10px 0; color: light-dark(#5d2352, #ddb6d0) }
</style>
</head>
<body>
<main>
<h1>This page needs a connection</h1>
<p>The server cannot be reached just now. ${
    links.length > 0
      ? 'These are kept on this device and work without it:'
      : 'Nothing is kept on this device that could be shown instead.'
  }</p>
${links.length > 0 ? `<ul>${links.join('')}</ul>` : ''}
<p><a href="">Try again</a></p>
</main>
</body>
</html>
`
}
